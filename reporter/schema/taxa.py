"""Species on public lists: Latin name, number and code by house code, which alone decides.

Numbers are taxonomic serial numbers of ITIS as in the fish table of a federal stream survey of 2019; whether
ITIS still calls each one valid is not confirmed. Codes are the three letters of FAO's ASFIS list.
"""

from typing import NamedTuple


class Taxon(NamedTuple):
    """What public lists call a species of the house code.

    name: Latin, "" where none is certain. tsn: its ITIS number. fao: its FAO code. rank: of the Latin name.
    unsure: why the number is not given out. disputed: what others call the species instead.
    """

    code: str
    name: str
    tsn: int | None = None
    fao: str = ""
    rank: str = "species"
    unsure: str = ""
    disputed: str = ""

    @property
    def identifier(self) -> str:
        """The number as a life science identifier, "" where there is none that is sure."""
        return "" if self.tsn is None or self.unsure else f"urn:lsid:itis.gov:itis_tsn:{self.tsn}"


_OLD_GENUS = "Some lists keep the genus Stizostedion."

TAXA: tuple[Taxon, ...] = (
    Taxon(
        "LMB",
        "Micropterus salmoides",
        168160,
        "MPS",
        # Second-hand and from memory: the 2023 list of the fisheries society has moved the name.
        disputed="Recent lists call it Micropterus nigricans, and the Florida bass M. salmoides.",
    ),
    Taxon("SMB", "Micropterus dolomieu", 550562, "MPJ"),
    Taxon("SPB", "Micropterus punctulatus", 168161, "MTT"),
    Taxon("BLG", "Lepomis macrochirus", 168141, "LMM"),
    Taxon("BLC", "Pomoxis nigromaculatus", 168167, "PXG"),
    Taxon("WHC", "Pomoxis annularis", 168166, "PXR"),
    Taxon("WAE", "Sander vitreus", 650173, "STV", disputed=_OLD_GENUS),
    Taxon("SAR", "Sander canadensis", 650171, "SZC", disputed=_OLD_GENUS),
    Taxon("NOP", "Esox lucius", 162139, "FPI"),
    Taxon("MUE", "Esox masquinongy", 162144, "FBN"),
    Taxon("CCF", "Ictalurus punctatus", 163998, "ITP"),
    Taxon("BCF", "Ictalurus furcatus", 163997, "ITF"),
    Taxon("FCF", "Pylodictis olivaris", 164029, "IPO"),
    Taxon("RBT", "Oncorhynchus mykiss", 161989, "TRR"),
    Taxon("BNT", "Salmo trutta", 161997, "TRS"),  # FAO calls it sea trout
    Taxon("BKT", "Salvelinus fontinalis", 162003, "SVF"),
    Taxon(
        "CUT",
        "Oncorhynchus clarkii",
        161983,
        "ONC",
        # From memory, unsure.
        disputed="Recent lists split the cutthroat trout into several species.",
    ),
    Taxon(
        "LKT",
        "Salvelinus namaycush",
        162002,
        "LAT",
        unsure="The number is from memory: the survey's table leaves it blank.",
    ),
    Taxon("STB", "Morone saxatilis", 167680, "STB"),
    Taxon("WHB", "Morone chrysops", 167682, "ROY"),
    Taxon("YEP", "Perca flavescens", 168469, "FPY"),
    Taxon("CAP", "Cyprinus carpio", 163344, "FCP"),
    Taxon("SBH", "", None, "SBH"),  # a hybrid: no number in the survey's table
    # Named by the genus that their species above share; their numbers were not looked up.
    Taxon("BLB", "Micropterus", rank="genus"),
    Taxon("CRA", "Pomoxis", rank="genus"),
)

TAXON_BY_CODE: dict[str, Taxon] = {taxon.code: taxon for taxon in TAXA}


def taxon_of(code: str) -> Taxon:
    """Return the taxon of a house code; a species that is on no list here has no Latin name."""
    return TAXON_BY_CODE.get(code) or Taxon(code, "", rank="")
