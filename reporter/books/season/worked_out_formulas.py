"""How it is worked out: what the words mean, and every formula with its source."""

DEFINITIONS: tuple[tuple[str, str], ...] = (
    ("Trip", "One guide's day on one water: one row of Trips. A night trip belongs to its first day."),
    ("Stint", "Part of a trip fished with one technique by so many rods: one row of Effort."),
    (
        "Rod-hours",
        "Minutes / 60 x rods on that technique. With Parts: its parts / all parts of the trip x hours "
        "fished x rods in the water (anglers, and you if you fished, x rods per angler).",
    ),
    ("Hours fished", "Lines in to lines out, less hours off."),
    (
        "Landed",
        "Kept + released + fate not known, of the species counted. Of a tally (Landed) and the rows of Catch "
        "the larger counts, for each technique on each trip. A fish lost at the boat is a missed bite.",
    ),
    (
        "In the rates",
        "A technique on a trip counts where all its stints have usable effort and the trip's log is "
        "finished; otherwise it leaves every rate with all its fish. Trips cut short stay in. A technique "
        "with "
        "effort and no fish counts as 0.",
    ),
)

FORMULAS: tuple[tuple[str, str, str], ...] = (
    (
        "Fish per rod-hour",
        "all fish landed / all rod-hours, over the trips (ratio of means); never the mean of the "
        "trips' rates",
        "Published: catch per unit of effort of completed trips, NRC 2006, Review of Recreational "
        "Fisheries Survey Methods, ch. 3; N. Am. J. Fish. Manage. 2015, doi 10.1080/02755947.2014.996689. "
        "From memory: Cochran 1977, Sampling Techniques, ch. 6.",
    ),
    (
        "Kept, released per rod-hour",
        "kept (released) fish over the same rod-hours; with fate not known they add up to fish per rod-hour",
        "Published: NRC 2006, ch. 3.",
    ),
    (
        "Variance of a rate",
        "n / (n - 1) x sum of (catch - rate x effort)^2 over trips / (all effort)^2: trips, not "
        "stints, are the units",
        "From memory: Cochran 1977, section 2.11 and ch. 6.",
    ),
    (
        "The range your record supports (95 %)",
        "variance v = the larger of the variance x (t / 1.96)^2 and that of fish "
        "coming one by one; y* = rate^2 / v fish that would vary as much; from rate / y* x gamma quantile "
        ".025 of "
        "shape y*, to rate / y* x gamma quantile .975 of shape y* + 1",
        "Published: Fay and Feuer 1997, Stat. Med. "
        "16:791-801 (gamma limits), Garwood 1936, Biometrika 28:437-442 (the case y* = y). From memory: "
        "Korn and "
        "Graubard 1998, Survey Methodology 24 (allowance for few trips). Putting them together is ours; "
        "simulated "
        "seasons keep its promise in 94 of 100 or better from five trips on.",
    ),
    (
        "With one to four trips",
        "v = (rate x effort + kappa x rate^2 x sum of effort^2) / effort^2, widened by "
        "(t / 1.96)^2 where kappa is your own",
        "Ours, tested by simulation.",
    ),
    (
        "kappa, the spread between trips",
        "pooled once over your techniques: max(0, (sum of n / (n - 1) x (catch - "
        "expected)^2 - expected) / sum of expected^2)",
        "Method of moments; no further source.",
    ),
    (
        "None caught",
        "0 to U, where the sum over trips of ln(1 + kappa x U x effort) / kappa = 3.689",
        "Elementary: the negative binomial's chance of nothing at all.",
    ),
    (
        "Half day",
        "rate of each trip x 2 rods x 4 hours; the middle half of them",
        "Quartiles of your own trips; ours.",
    ),
    (
        "Steadied for small samples",
        "m + w (rate - m): m is the rate of all techniques together, w grows with a technique's rod-hours "
        "and with how much techniques differ beyond chance (moment estimator); fish in bunches count for "
        "less",
        "Published: Marshall 1991, Appl. Stat. 40:283-294. Allowing for bunches is ours, tested by "
        "simulation.",
    ),
    (
        "Chance it is really your best",
        "the chance that its true rate is the highest, from the same gamma distributions, by quadrature: "
        "clear from 90 % and five trips on, ahead above 50 %, else too close to call",
        "Elementary; the limits are ours. On rates as fished: it does not say that a technique is better.",
    ),
    (
        "Side by side, same trips",
        "sum of (fish of this x rod-hours of the other / rod-hours of both) over trips, divided by the same "
        "of the other (Mantel-Haenszel); range: ratio x / exp(the larger of t x error between trips and "
        "1.96 x error of fish coming one by one)",
        "From memory: Greenland and Robins 1985, Biometrics 41:55-68. The larger of the two errors is ours, "
        "tested by simulation.",
    ),
    (
        "Side by side, same kind of day",
        "the same sums over kinds of day (behind a front on day 1 or 2, or not, by the tool's verdict; band "
        "of water temperature); trips of one kind tell the error. Same hours: over stints on the clock of "
        "both within 15 minutes of each other",
        "As above, with Taylor linearisation over trips.",
    ),
    (
        "Out-fished",
        "only where both ranges lie on the same side of 1, each at 1 - .05 / pairs looked at (Bonferroni); "
        "from 5 trips with both and 5 fish on each, and half of the rod-hours on shared kinds of day",
        "Ours: in simulated seasons of equal techniques said in under 3 of 100, whether the guide picks by "
        "conditions, switches when it goes slow or reads the day.",
    ),
    (
        "As if fished on the season's mix of days",
        "sum of share of rod-hours x rate over the kinds of day on which all were fished; gamma range, "
        "widened by how much trips of one kind differ",
        "Published: Fay and Feuer 1997, Stat. Med. 16:791-801. Widening it is ours.",
    ),
)
