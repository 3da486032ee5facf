"""Start here: how the log is filled in, on one page, in a guide's own words."""

from reporter.books.blocks import Line, Sheet, Text
from reporter.schema.units import System

NAME = "Start here"

_ON_THE_WATER = (
    "Print the sheet Boat card, one a trip, and tally on it in pencil: a mark for every half hour that an"
    " angler fishes a technique, a mark a fish. It asks in the order in which you type. A Front call, if you"
    " make one, is written before the first cast: afterwards it proves nothing."
)

_EVENING = (
    "1. Trips: one row for the day. Its number, date, water, start, end, how many anglers; then, in the same"
    " row, the day's reading: water temperature, clarity, sky, wind.",
    "2. Effort: one row for everything that was tied on, the duds too. Under Parts goes the number of tally"
    " marks on the boat card: a mark an angler a half hour. 6-4-4-2-2 always adds up, because the report"
    " shares out the day by them. If you timed it, give Minutes instead, or Start and End; one way for the"
    " whole trip. Landed is what came into the boat, Missed what did not. Write 0 for a dud.",
    "3. Catch: only the fish that you want to say more of: species, length, weight, kept or released. One row"
    " a fish, or one row with a Count for several alike. On a day without a fish write none as its species.",
)

_RULES = (
    "Zero means zero, blank means that nobody noted it.",
    "A blank Trip on Effort and Catch means the trip of the row above. So never sort Effort or Catch while"
    " cells under Trip are blank.",
    "A number that you will not use stays on Trips with the Status void, a trip called off with cancelled.",
    "A heading in white on dark must be filled in on every row; but Trip may follow the row above, and Start"
    " and End your usual hours. Any other cell may stay blank. Brackets hold the unit of the cells below.",
    "Click on a cell to read what goes in. Where an arrow shows, it offers a list.",
)

_ONCE = (
    "Season: your name, the first and the last day, your time zone, which fish count, your usual start and"
    " end. Techniques: the usual ones are there; change the list as you like.",
    "Waters and Clients: a row each, with your own code for a client. The rest of the log uses the code.",
    "Conditions: further readings of a day. The other sheets serve the paperwork; leave empty what you do"
    " not need.",
    "To know which days lay behind a front: a row a day on Weather, fished or not (high, low, barometer,"
    " wind); or, at the season's end, one CSV file of hourly airport weather, which your country's weather"
    " archive gives to anyone. Without either most days read"
    " NOT ENOUGH DATA: readings on trips alone seldom tell.",
)

_REPORT = (
    'reporter check "{log}" says what to mend, row by row, and changes nothing.',
    'reporter build "{log}" writes your season report beside it, at any time of the season; with --weather'
    " and a file of hourly weather it knows its front days better.",
)

_PRIVATE = (
    "Notes, Reach and licence numbers stay on your own pages. A client's copy is made from that client's own"
    " trips alone: of your words it shows only For the client, and it names a water only if Waters says so."
)

_CAUTION = (
    "The log looks back and advises nobody. For weather, cold water, life jackets and passengers go by the"
    " local authority; for seasons, limits, permits and fees by the current regulations, the terms of your"
    " own licence, and licensed practice."
)


def start_here(system: System) -> Sheet:
    """Return the sheet; the log in its examples is the blank log of these units."""
    log = f"season log {system}.xlsx"
    return Sheet(
        NAME,
        (
            Text(
                (
                    Line(NAME, "title"),
                    Line("Five minutes an evening; the report does the rest.", "lead"),
                    Line("On the water", "heading"),
                    Line(_ON_THE_WATER),
                    Line("In the evening", "heading"),
                    *(Line(text) for text in _EVENING),
                    Line("Rules of the rows", "heading"),
                    *(Line(text) for text in _RULES),
                    Line("Once, and when something is new", "heading"),
                    *(Line(text) for text in _ONCE),
                    Line("The report", "heading"),
                    *(Line(text.format(log=log)) for text in _REPORT),
                    Line("What stays private", "heading"),
                    Line(_PRIVATE),
                    Line(_CAUTION, "caution"),
                )
            ),
        ),
        "log",
    )
