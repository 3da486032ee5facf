"""How it is worked out: hang-ups, lures lost, bites missed, what was used and what to have."""

TACKLE: tuple[tuple[str, str, str], ...] = (
    (
        "Hang-ups, lures lost per rod-hour",
        "all of them / all rod-hours of the stints that say; a blank is not recorded and its rod-hours stay "
        "out, 0 is none. Only stints that count in the rates; what lies outside is said",
        "A ratio of means, as fish per rod-hour. No range: the number of trips says how far to trust it.",
    ),
    (
        "Share landed",
        "landed / (landed + missed), over the stints that say what was missed and whose fish are known to "
        "be their own; where a technique's stints on a trip cannot be told apart, over them together if all "
        "of them say and lie in one group",
        "Elementary.",
    ),
    (
        "What was used how much",
        "by technique; under it a line for each size and each colour, what was not written last. Colours are "
        "one where only case, spaces and punctuation differ; sizes where only case, and blanks and hyphens "
        "between words, do: 1/4 and 14, 3.5 and 35 are two",
        "Ours.",
    ),
    (
        "Losses to expect, to have",
        "a technique's lures lost per rod-hour x its rod-hours x rod-hours next season / this season's; to "
        "have: rounded up. Its sizes and colours: the same losses in the shares of their rod-hours, not "
        "rounded. With blanks read as none lost: over all its rod-hours and trips",
        "Ours; it assumes next season's fishing in the same shares, losing as often.",
    ),
)
"""Name, rule and source of each."""
