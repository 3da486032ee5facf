"""Why a log could not be read."""


class Unreadable(Exception):  # noqa: N818 - named as it reads in an except clause
    """A file cannot be read; ``str()`` is one sentence that names the file and says what to do."""


class Refused(Exception):  # noqa: N818 - the same
    """Why an engine will not read a file, and what to do: the words after "I cannot read FILE: ".

    Engines know nothing of file names; the door turns this into Unreadable.
    """


SAVE_AGAIN = "open it in your spreadsheet program, save it as an Excel workbook (.xlsx) and try again"
COPY_AGAIN = "copy it again from where it came, or open it in your spreadsheet program and save it anew"
