"""The longest fish of each species, to tell centimetres or feet typed as inches from a fish.

From memory of the longest total lengths in the literature, rounded up: no source to cite, and no use beyond
catching a slip. Missing a slip costs less than doubting a guide's fish of a lifetime.
"""

LONGEST_MM: dict[str, int] = {
    **dict.fromkeys(("LMB", "FLB", "BLB"), 1000),
    "SMB": 720,
    **dict.fromkeys(("SPB", "ALB", "SHB"), 670),
    **dict.fromkeys(("GUB", "REB", "SUB"), 500),
    **dict.fromkeys(("BLG", "RES", "RKB", "SUN"), 450),
    "PKS": 420,
    **dict.fromkeys(("GSF", "RBS", "WAR"), 340),
    **dict.fromkeys(("BLC", "WHC", "CRA"), 560),
    "WAE": 1100,
    **dict.fromkeys(("SAR", "SAE"), 920),
    "YEP": 520,
    "NOP": 1550,
    **dict.fromkeys(("MUE", "TGM"), 1850),
    "CHP": 1020,
    **dict.fromkeys(("RFP", "GRP"), 460),
    "CCF": 1350,
    **dict.fromkeys(("BCF", "FCF"), 1700),
    "BUL": 650,
    "RBT": 1250,
    "BNT": 1420,
    "BKT": 900,
    "CUT": 1020,
    "LKT": 1530,
    "STB": 2000,
    **dict.fromkeys(("WHB", "YLB"), 500),
    "SBH": 1000,
    "FRD": 980,
    "CAP": 1250,
    "BOW": 1120,
    "BUF": 1250,
}
"""Species code -> mm of total length that none is known to have passed; gars are of too many sizes."""

SHORTEST_ON_A_HOOK_MM = 76.2
"""3 in: a fish of a large species shorter than this is a number typed in feet."""

LARGE_SPECIES_MM = 500
"""From this longest length on a species is a large one."""
