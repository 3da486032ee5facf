"""Draws native charts of table columns."""

import math
import re
from collections.abc import Iterator, Mapping

from xlsxwriter.chart import Chart as NativeChart

from reporter.books.blocks import Chart, Series
from reporter.write.canvas import Canvas
from reporter.write.cells import done
from reporter.write.clean import one_line
from reporter.write.names import Names
from reporter.write.place import ChartPlace
from reporter.write.style import (
    CHART_TEXT,
    CHART_TITLE,
    GRID_LINE,
    axis_format,
    error_line,
    flag_style,
    series_style,
)
from reporter.write.values import given, rounded

_ROW_PX = 21
_INSET_PX = 3  # keeps the frame off the row above, which may stand on another page
_NARROWEST_PX, _WIDEST_PX = 620, 920
_LONGEST_TITLE = 250
_MOST_LABELS = 20  # of a line chart's foot, that none covers the next
_ROUND = (1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12)
_LOOKS_LIKE_A_CELL = re.compile(r"!(?=\$?[A-Za-z])")


def draw_chart(canvas: Canvas, place: ChartPlace) -> None:
    """Draw a chart over its rows, as wide as the page."""
    chart, names = place.chart, canvas.names
    native = canvas.workbook.add_chart({"type": chart.kind})
    for number, series in enumerate(chart.series):
        native.add_series(_series(chart, series, number, names))
    native.set_title({"name": _literal(chart.title), "name_font": CHART_TITLE, "overlay": False})
    _set_axes(native, chart, canvas)
    native.set_legend({"none": True} if len(chart.series) < 2 else {"position": "bottom", "font": CHART_TEXT})
    width = min(max(canvas.plan.px(0, canvas.plan.columns - 1), _NARROWEST_PX), _WIDEST_PX)
    native.set_size({"width": width, "height": chart.rows * _ROW_PX - 2 * _INSET_PX})
    for row in range(place.top, place.top + chart.rows):
        canvas.tall(row, _ROW_PX)
    # The rows must have their heights before the chart is anchored to them.
    canvas.set_heights()
    description = one_line(chart.alt) or f"{chart.kind} chart: {one_line(chart.title)}"
    done(
        canvas.cells.sheet.insert_chart(
            place.top, 0, native, {"description": description, "y_offset": _INSET_PX}
        ),
        "chart",
    )


def _series(chart: Chart, series: Series, number: int, names: Names) -> Mapping[str, object]:
    points = len(_numbers(series.values, names))
    options: dict[str, object] = {
        "name": _literal(series.name),
        "categories": names.column_range(series.labels),
        "values": names.column_range(series.values),
        **(flag_style() if series.flags else series_style(chart.kind, number, points=points)),
    }
    if series.minus or series.plus:
        options["y_error_bars"] = _error_bars(series, names)
    return options


def _error_bars(series: Series, names: Names) -> Mapping[str, object]:
    options: dict[str, object] = {"type": "custom", "line": error_line()}
    if not (series.minus and series.plus):
        options["direction"] = "minus" if series.minus else "plus"
    for end, symbol in (("minus", series.minus), ("plus", series.plus)):
        if symbol:
            options[f"{end}_values"] = names.column_range(symbol)
            options[f"{end}_data"] = _numbers(symbol, names)
    return options


def _set_axes(native: NativeChart, chart: Chart, canvas: Canvas) -> None:
    names, paper = canvas.names, canvas.cells.formats.paper
    first = chart.series[0]
    labels: dict[str, object] = {
        **_axis(chart.label_title),
        "major_gridlines": {"visible": False},
        "label_position": "low",
    }
    if names.column(first.labels).field.look == "date":
        labels |= {"num_format": axis_format("date", paper), "text_axis": True}
    points = len(_numbers(first.values, names))
    if chart.kind == "line" and points > _MOST_LABELS:
        step = math.ceil(points / _MOST_LABELS)
        labels |= {"interval_unit": step, "interval_tick": step}
    values: dict[str, object] = {
        **_axis(chart.value_title),
        "num_format": axis_format(names.column(first.values).field.look, paper),
        "major_gridlines": {"visible": True, "line": GRID_LINE},
        "line": {"none": True},
    }
    if chart.kind == "bar":
        # In the table's order from the top down, with the values' axis at the foot all the same.
        labels |= {"reverse": True, "crossing": "max"}
    values |= _doubling(chart, names) if chart.ratios else _ends(chart, names)
    across, upright = (values, labels) if chart.kind == "bar" else (labels, values)
    native.set_x_axis(across)
    native.set_y_axis(upright)


def _axis(title: str) -> Mapping[str, object]:
    return {"name": _literal(title), "name_font": CHART_TEXT, "num_font": CHART_TEXT}


def _doubling(chart: Chart, names: Names) -> dict[str, object]:
    """Reach over all ratios and their ranges in powers of two; bars begin at 1."""
    ranges = [(low, high) for low, high in _ranges(chart, names) if low > 0]
    low = min([0.5, *(low for low, _ in ranges)])
    high = max([2.0, *(high for _, high in ranges)])
    ends = {"min": 2.0 ** math.floor(math.log2(low)), "max": 2.0 ** math.ceil(math.log2(high))}
    return {"log_base": 2, "major_unit": 2, "num_format": "General", "crossing": 1, **ends}


def _ends(chart: Chart, names: Names) -> dict[str, object]:
    """Begin bars at zero, and reach as far as the error bars do, which no program minds by itself."""
    ranges = list(_ranges(chart, names))
    low = min([0.0, *(low for low, _ in ranges)])
    high = max([0.0, *(high for _, high in ranges)])
    ends: dict[str, object] = {}
    if chart.kind != "line" and low >= 0:
        ends["min"] = 0
    if any(series.plus for series in chart.series) and high > 0:
        ends["max"] = _round_end(high)
    return ends


def _ranges(chart: Chart, names: Names) -> Iterator[tuple[float, float]]:
    """Give how far down and up each value reaches with its error bars."""
    for series in chart.series:
        values = _numbers(series.values, names)
        minus, plus = (
            _numbers(symbol, names) if symbol else [None] * len(values)
            for symbol in (series.minus, series.plus)
        )
        for value, down, up in zip(values, minus, plus, strict=True):
            if value is not None:
                yield value - (down or 0.0), value + (up or 0.0)


def _round_end(number: float) -> float:
    """Return the least round number that is not below a positive one."""
    power = 10.0 ** math.floor(math.log10(number))
    return rounded(power * next(step for step in _ROUND if step * power >= number))


def _numbers(symbol: str, names: Names) -> list[float | None]:
    """Return the numbers that a column shows, None where it shows none."""
    place, _, field = names.column(symbol)
    shown = (given(cell) for cell in place.table.columns.get(field.key, ()))
    return [float(value) if isinstance(value, int | float) else None for value in shown]


def _literal(text: str) -> str:
    """Keep xlsxwriter from reading a title such as `Wow!A1` as the address of a cell."""
    return _LOOKS_LIKE_A_CELL.sub("! ", one_line(text)[:_LONGEST_TITLE])
