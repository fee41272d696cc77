"""What has no property here, and why: it is no calculation, or its inputs come from a list of the program's own."""

from __future__ import annotations

_KEYS = "words for a key of the program's own list; all of them are asked for by its own tests"
# The begin of a name, and the reason.
REASONS = {
    "core.records.": "asks the database or the disk; what it reads from outside is in test_parsers",
    "core.words.": "its templates are in the code",
    "core.measuring.reach.": "guards calls; every call here goes through it",
    "core.measuring.finite.": "guards calls; every call that it guards goes through it",
    "core.guidance.walkplan.": "reads the plan that comes with the program",
    "core.guidance.walk.Walk.": _KEYS,
    "core.guidance.walkwords.": _KEYS,
    "core.guidance.names.parameter_words": _KEYS,
    "core.guidance.charted.other_quantities": _KEYS,
    "core.guidance.decisions.settable": _KEYS,
    "core.guidance.handchecks.findings_of": _KEYS,
    "core.guidance.whosejudge.cause_words": _KEYS,
    "core.guidance.ladderadvice.check_ladder": "asked by judge_ladder, which has its own property",
    "core.pieces.marks.mark": "its letters are in the code",
    "core.pieces.outfile.": "writes a file",
    "core.pieces.meshfiles.write_pieces": "writes a file; the solids in it are asked for by solids_of",
    "core.pieces.toolpathtext.write_program": "writes a file; the text in it is asked for by program_text",
}


def reason_of(name: str) -> str:
    """Return why a call has no property, or nothing."""
    return next((reason for begin, reason in REASONS.items() if name.startswith(begin)), "")
