"""The pages speak to someone who is no statistician: no word of that trade stands there, or it is explained.

How it is worked out and Worked through are for doubters and may use them all.
"""

import re
import zipfile
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest
from click.testing import CliRunner

from reporter.cli.main import cli

SAMPLES = Path(__file__).parent.parent.parent / "sample_workbooks"
FOR_DOUBTERS = ("How it is worked out", "Worked through")

NEVER = {
    r"varianc\w*": "say how far trips differ",
    r"dispersi\w*|heteroge\w*": "say how far trips differ",
    r"standard (deviation|error)s?": "say the range",
    r"confidence": "say the range that your record supports",
    r"credible|posterior|prior\b": "say the range that your record supports",
    r"intervals?": "say range",
    r"signific\w*": "say what the record can tell",
    r"hypothes\w*|p-values?": "say hunch",
    r"quantiles?|quartiles?|percentiles?|medians?": "say the middle half, or what share",
    r"(the|a|trip's|geometric|vector|weighted) mean\b|mean (of|length|weight|relative)": "say average",
    r"cluster\w*|autocorrel\w*": "say trip by trip",
    r"correlat\w*|regress\w*|covari\w*": "say what goes with what",
    r"coefficients?|exponents?|logarithm\w*|log-\w+": "a formula, for doubters",
    r"estimators?|likelihood|bootstrap\w*|jackknife": "a method, for doubters",
    r"bias(ed)?": "say which way it flatters",
    r"strat(um|a|ified)": "say kind of day",
    r"overlap\w*": "say on what both were fished",
    r"standardi[sz]\w*": "say as if fished on the same mix of days",
    r"shrunk\w*|shrink\w*": "say steadied",
    r"probabilit\w*|odds": "say chance",
    r"ind(ex|ices)": "say what it counts",
    r"pooled|weighted": "say all together",
    r"outliers?|robust": "say unusual",
    r"phi|gamma|sigma|lambda|chi": "a symbol, for doubters",
    r"poisson|binomial|mantel|haenszel|fay|feuer|bonferroni|wilson|fieller": "a method's name, for doubters",
    r"cpue|hpue|rpue": "say fish per rod-hour",
    r"parameters?|algorithms?|heuristics?": "say setting, or how it is worked out",
    r"null|nan|n/a|none type": "say not known, or leave it blank",
    r"strata|attributes?|covariates?": "name them: variant, colour, cover",
}
"""Words that stand on no page but How it is worked out -> what is said there instead."""

EXPLAINED = {
    r"kappa": "how much oftener you agree than by luck",
    r"psd": "of 100 measured fish of stock length or longer",
    r"relative weight": "weight for its length|100: a plump fish of its length",
    r"ratios?": "is twice as m(any|uch)",
    r"at 95 %": "of 20 such ranges about 19 take in what is really so",
    r"steadied": "drawn towards",
    r"(borrowed|assumed) spread": "borrowed spread: few trips, so how far those of your other",
    r"samples?": "drawn towards|never compare an angling psd",
    r"proportional size distribution": "of 100 measured fish",
    r"bunching": "1: fish come one by one",
    r"squares": "times themselves",
}
"""Words that stand only on a page that says what they mean -> what it says."""


def shown(path: Path) -> dict[str, list[str]]:
    """Sheet -> every text on it, notes on cells too; "charts" -> every text in charts."""
    book = openpyxl.load_workbook(path, data_only=True)
    pages = {sheet.title: list(_texts(sheet)) for sheet in book.worksheets}
    with zipfile.ZipFile(path) as package:
        charts = [name for name in package.namelist() if re.match(r"xl/charts/chart\d+\.xml", name)]
        xml = " ".join(package.read(name).decode("utf-8") for name in charts)
    pages["charts"] = re.findall(r"<(?:a:t|c:v)>([^<]*[^\W\d][^<]*)<", xml)
    return pages


def _texts(sheet: "openpyxl.worksheet.worksheet.Worksheet") -> Iterator[str]:
    yield sheet.title
    for row in sheet.iter_rows():
        for cell in row:
            if isinstance(cell.value, str):
                yield cell.value
            if cell.comment:
                yield cell.comment.text


def of_words(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{pattern})(?!\w)", re.IGNORECASE)


@pytest.fixture(scope="module", params=["us", "metric", "several"])
def pages(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[str]]:
    metric = "demo season metric, saved by LibreOffice Calc.xlsx"
    chosen = {
        "us": ["demo season.xlsx"],
        "metric": [metric],
        "several": ["demo season.xlsx", "demo season 2025.xlsx", metric, "--together"],
    }[request.param]
    logs = [word if word.startswith("--") else str(SAMPLES / word) for word in chosen]
    folder = tmp_path_factory.mktemp("plain")
    weather = SAMPLES / "demo season hourly weather.csv"
    arguments = ["build", *logs, "--out", str(folder), "--weather", str(weather), "--quiet"]
    assert CliRunner().invoke(cli, arguments).exit_code == 0
    return shown(next(folder.glob("*.xlsx")))


def test_every_page_and_chart_is_read(pages: dict[str, list[str]]) -> None:
    assert {"At a glance", "Techniques", "Side by side", "Hunches", "Fish", "Tackle", "Trips"} <= set(pages)
    assert len(pages["charts"]) > 20
    assert any(text.startswith("Trips on which it was fished.") for text in pages["Techniques"])  # a note
    worked_out = " ".join(pages[FOR_DOUBTERS[0]])
    found = [pattern for pattern in NEVER if of_words(pattern).search(worked_out)]
    assert len(found) >= 8, "the patterns find what they are for where it does stand"


@pytest.mark.parametrize("pattern", NEVER)
def test_no_page_has_a_word_of_statistics(pattern: str, pages: dict[str, list[str]]) -> None:
    word = of_words(pattern)
    found = [
        (name, text)
        for name, texts in pages.items()
        if name not in FOR_DOUBTERS
        for text in texts
        if word.search(text)
    ]
    assert found == [], NEVER[pattern]


@pytest.mark.parametrize("pattern", EXPLAINED)
def test_a_word_that_is_not_plain_is_explained_on_its_page(pattern: str, pages: dict[str, list[str]]) -> None:
    word, said = of_words(pattern), re.compile(EXPLAINED[pattern], re.IGNORECASE)
    bare = [
        (name, next(text for text in texts if word.search(text)))
        for name, texts in pages.items()
        if name not in (*FOR_DOUBTERS, "charts")
        if any(word.search(text) for text in texts) and not any(said.search(text) for text in texts)
    ]
    assert bare == []
