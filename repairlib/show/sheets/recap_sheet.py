"""The bench sheet of a recap plan: A4, black on white, boxes to tick with a pen.

One HTML page that needs nothing else: print it from any browser. What stands on it is decided in
repairlib.recap; the cautions come from repairlib.core.safety.
"""

from __future__ import annotations

from repairlib.core.html import picture, text
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import source
from repairlib.recap import NOT_YOURS, ORDER_RULE, RULES, Item, Plan, Saved, Step, write_whole
from repairlib.show.recap_board import draw_both_sides
from repairlib.show.sheets.sheet_pieces import BOX, STYLE, short, table
from repairlib.show.sheets.sheet_sections import measured_section, order_section


def bench_sheet(plan: Plan) -> str:
    """The bench sheet of the plan as one HTML page.

    >>> from repairlib.recap import plan
    >>> page = bench_sheet(plan("C1,10/16,elect\\nC2,<b>,film\\n"))
    >>> "10 µF 16 V 105 °C polar aluminium" in page.replace("\\xa0", " "), "<b>" in page
    (True, False)
    """
    title = f"Recap of {plan.name}"
    parts = [
        f"<h1>{text(title)}</h1>",
        '<p class="fields">Device <span></span> Name <span></span> Date <span></span></p>',
        f"<p>{text(str(plan))}.</p>",
        *[f"<p>{text(note)}</p>" for note in plan.list.notes],
        *[_caution(key) for key in plan.cautions],
        f"<h2>Fitting order</h2><p>{text(ORDER_RULE)}</p>" if plan.items else "",
        *[_step(plan, number, step) for number, step in enumerate(plan.steps, 1)],
        _maps(plan),
        measured_section(plan),
        _waiting(plan, "On hold: settle these before you order", plan.held),
        _waiting(plan, "Judge these one by one", plan.judged),
        _unreadable(plan),
        _listed("Named twice in the list", [str(duplicate) for duplicate in plan.duplicates]),
        _listed("On the board, but not in the list", plan.not_listed),
        _kept(plan),
        order_section(plan),
        _rules(plan),
    ]
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>{text(title)}</title><style>{STYLE}</style></head>\n<body>\n"
        + "\n".join(part for part in parts if part)
        + "\n</body></html>\n"
    )


def write_bench_sheet(plan: Plan, path, overwrite: bool = False) -> Saved:
    """Write the bench sheet to an HTML file; an existing file is left alone unless `overwrite`.

    Raises RepairlibError when it exists or cannot be written; then nothing has changed.
    """
    page = bench_sheet(plan).encode("utf-8", "replace")
    return Saved(write_whole(path, page, overwrite))


def _caution(key: str) -> str:
    hazard = HAZARDS[key]
    sentences = " ".join((*hazard.do, hazard.defer))
    return (
        f'<div class="caution" role="note"><p><strong>CAUTION: {text(hazard.title)}.</strong> '
        f"{text(sentences)}</p></div>"
    )


def _maps(plan: Plan) -> str:
    """The board from both sides, where it is known; else once, as its file has it."""
    maps = "".join(picture(one) for one in draw_both_sides(plan))
    return f"<h2>Map of the board</h2>{maps}" if maps else ""


def _step(plan: Plan, number: int, step: Step) -> str:
    headings = [
        ("ref", "Place"),
        ("old", "Take out"),
        ("new", "Fit"),
        ("plus", "Plus"),
        ("", "Look at"),
        ("line", "List line"),
        ("tick", "Fitted"),
        ("tick", "Plus seen"),
    ]
    title = f"<h2>{text(f'Step {number}: {step.title}')}</h2>"
    if step.handed_on:
        warning = f'<p class="caution"><strong>{text(NOT_YOURS)}</strong></p>'
        rows = [_fitting_row(item)[:-2] for item in step.items]
        return title + warning + table(headings[:-2], rows)
    rows = [_fitting_row(item) for item in step.items]
    return title + table(headings, rows)


def _fitting_row(item: Item) -> list[str]:
    changed = [did for name, did in item.new.rules if name in ("made value", "voltage not below")]
    changed = [did for did in changed if "as the old part" not in did]
    part = item.selection.part if item.selection else None
    small = ([part.part] if part else []) + changed
    why = f"<small>{text('; '.join(small))}</small>" if small else ""
    return [
        text(item.reference),
        text(short(item.old.text, 60)),
        text(item.new) + why,
        text(item.polarity),
        "".join(f"<small>{text(look)}</small>" for look in item.looks),
        str(item.line),
        BOX,
        BOX,
    ]


def _waiting(plan: Plan, title: str, items: list[Item]) -> str:
    if not items:
        return ""
    headings = [("ref", "Place"), ("", "As listed"), ("", "Why"), ("line", "List line")]
    rows = [
        [
            text(item.reference),
            f'<span class="source">{text(short(plan.source(item)))}</span>',
            text(item.told),
            str(item.line),
        ]
        for item in items
    ]
    hazards = dict.fromkeys(key for item in items for key in item.cautions)
    titles = " ".join(f"{HAZARDS[key].title}." for key in hazards)
    caution = f'<p class="caution"><strong>CAUTION: {text(titles)}</strong> ' if titles else ""
    caution += "What to do stands on the first page.</p>" if titles else ""
    waiting = table([*headings, ("tick", "Settled")], [[*row, BOX] for row in rows])
    return f"<h2>{text(title)}</h2>{caution}{waiting}"


def _unreadable(plan: Plan) -> str:
    if not plan.unreadable:
        return ""
    headings = [("line", "List line"), ("", "Text"), ("", "Why"), ("tick", "Settled")]
    rows = [
        [
            str(line.line),
            f'<span class="source">{text(short(line.text))}</span>',
            text(line.why),
            BOX,
        ]
        for line in plan.unreadable
    ]
    return f"<h2>Lines that could not be read</h2>{table(headings, rows)}"


def _listed(title: str, texts: list[str]) -> str:
    if not texts:
        return ""
    return f"<h2>{text(title)}</h2>" + "".join(f"<p>{text(one)}</p>" for one in texts)


def _kept(plan: Plan) -> str:
    if not plan.kept:
        return ""
    by_why: dict[str, list[str]] = {}
    for item in plan.kept:
        looks = "; ".join((item.why, *item.looks))
        by_why.setdefault(looks, []).append(f"{item.reference} (line {item.line})")
    texts = [f"{', '.join(places)}: {why}" for why, places in by_why.items()]
    return _listed("These stay", texts)


def _rules(plan: Plan) -> str:
    used = dict.fromkeys(item.decision.rule for item in plan.all_items)
    for item in plan.items:
        used.update(dict.fromkeys(name for name, _ in item.new.rules))
    if plan.board is not None:
        used["fits the board"] = None
    entries = "".join(
        f"<dt>{text(name)}</dt><dd>{text(RULES[name][0])} "
        f"<small>Source: {text(source(RULES[name][1]).how)}.</small></dd>"
        for name in RULES
        if name in used
    )
    return f'<h2>The rules behind this plan</h2><dl class="rules">{entries}</dl>' if used else ""
