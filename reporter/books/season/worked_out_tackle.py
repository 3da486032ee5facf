"""How it is worked out: hang-ups, lures lost, bites missed, the restock list."""

from reporter.schema.thresholds import MIN_OWN_TRIPS

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
        "a line a technique, variant, size and colour; case, spaces and punctuation differ freely. What was "
        "not written is blank, and one line",
        "Ours.",
    ),
    (
        "Restock list",
        "lures lost per rod-hour x the line's rod-hours x rod-hours next season / this season's, rounded up. "
        f"The line's own rate from {MIN_OWN_TRIPS} trips that say on, else its technique's. With blanks read "
        "as none lost: over all its rod-hours and trips",
        "Ours; it assumes next season's fishing in the same shares, losing as often.",
    ),
)
"""Name, rule and source of each."""
