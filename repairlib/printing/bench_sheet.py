"""The bench sheet of a recap plan: A4, black on white, boxes to tick with a pen.

One HTML page that needs nothing else: print it from any browser. What stands on it is decided in
repairlib.recap; the cautions come from repairlib.safety.
"""

from __future__ import annotations

from html import escape

from repairlib.recap.export import Saved, write_whole
from repairlib.recap.fitting_order import ORDER_RULE, Step
from repairlib.recap.item import Item
from repairlib.recap.planner import Plan
from repairlib.recap.rules import RULES
from repairlib.safety import HAZARDS
from repairlib.sources import source

STYLE = """
@page { size: A4; margin: 14mm 12mm; }
* { box-sizing: border-box; }
body { font: 10pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; color: #000;
  background: #fff; margin: 0 auto; max-width: 186mm; padding: 4mm 0; }
h1 { font-size: 17pt; margin: 0 0 1mm; }
h2 { font-size: 12.5pt; margin: 6mm 0 1.5mm; break-after: avoid; }
p { margin: 0 0 1.5mm; }
.fields span { display: inline-block; border-bottom: 1px solid #000; width: 42mm;
  margin-right: 6mm; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { border: 1px solid #000; padding: 1mm 1.4mm; text-align: left; vertical-align: top;
  overflow-wrap: anywhere; }
th { border-bottom-width: 2px; font-size: 8.5pt; }
td small { display: block; font-size: 8.5pt; }
.box { display: inline-block; width: 4.2mm; height: 4.2mm; border: 1.4px solid #000; }
.tick { width: 14mm; text-align: center; }
.ref { width: 12mm; font-weight: bold; }
.line { width: 10mm; text-align: right; }
.plus { width: 21mm; font-weight: bold; }
.old { width: 29mm; }
.new { width: 43mm; }
.caution { border: 2px solid #000; border-left-width: 8px; padding: 1.5mm 3mm; margin: 2mm 0;
  break-inside: avoid; }
.caution p { margin: 0; }
.source { font-family: "Liberation Mono", monospace; font-size: 8.5pt; white-space: pre-wrap; }
.rules dt { font-weight: bold; } .rules dd { margin: 0 0 1mm 6mm; }
"""
BOX = '<span class="box" role="img" aria-label="box to tick"></span>'


def bench_sheet(plan: Plan) -> str:
    """The bench sheet of the plan as one HTML page.

    >>> from repairlib.recap import plan
    >>> page = bench_sheet(plan("C1,10/16,elect\\nC2,<b>,film\\n"))
    >>> "10 µF 16 V 105 °C polar aluminium" in page.replace("\\xa0", " "), "<b>" in page
    (True, False)
    """
    title = f"Recap of {plan.name}"
    parts = [
        f"<h1>{_text(title)}</h1>",
        '<p class="fields">Device <span></span> Name <span></span> Date <span></span></p>',
        f"<p>{_text(str(plan))}.</p>",
        *[f"<p>{_text(note)}</p>" for note in plan.list.notes],
        *[_caution(key) for key in plan.cautions],
        f"<h2>Fitting order</h2><p>{_text(ORDER_RULE)}</p>" if plan.items else "",
        *[_step(plan, number, step) for number, step in enumerate(plan.steps, 1)],
        _waiting(plan, "On hold: settle these before you order", plan.held),
        _waiting(plan, "Judge these one by one", plan.judged),
        _unreadable(plan),
        _listed("Named twice in the list", [str(duplicate) for duplicate in plan.duplicates]),
        _listed("On the board, but not in the list", plan.not_listed),
        _kept(plan),
        _rules(plan),
    ]
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>{_text(title)}</title><style>{STYLE}</style></head>\n<body>\n"
        + "\n".join(part for part in parts if part)
        + "\n</body></html>\n"
    )


def write_bench_sheet(plan: Plan, path, overwrite: bool = False) -> Saved:
    """Write the bench sheet to an HTML file; an existing file is left alone unless `overwrite`.

    Raises RepairlibError when it exists or cannot be written; then nothing has changed.
    """
    page = bench_sheet(plan).encode("utf-8", "replace")
    return Saved(write_whole(path, page, overwrite))


def _text(text: object) -> str:
    return escape(str(text))


def _caution(key: str) -> str:
    hazard = HAZARDS[key]
    sentences = " ".join((*hazard.do, hazard.defer))
    return (
        f'<div class="caution" role="note"><p><strong>CAUTION: {_text(hazard.title)}.</strong> '
        f"{_text(sentences)}</p></div>"
    )


def _table(headings: list[tuple[str, str]], rows: list[list[str]]) -> str:
    """A table of cells that are HTML already; each heading is (class, text)."""
    head = "".join(f'<th class="{name}" scope="col">{_text(text)}</th>' for name, text in headings)
    body = "".join(
        "<tr>"
        + "".join(
            f'<td class="{name}">{cell}</td>' for (name, _), cell in zip(headings, row, strict=True)
        )
        + "</tr>\n"
        for row in rows
    )
    return f"<table><thead><tr>{head}</tr></thead>\n<tbody>{body}</tbody></table>"


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
    rows = [_fitting_row(item) for item in step.items]
    return f"<h2>Step {number}: {_text(step.title)}</h2>{_table(headings, rows)}"


def _fitting_row(item: Item) -> list[str]:
    changed = [did for name, did in item.new.rules if name in ("made value", "voltage not below")]
    changed = [did for did in changed if "as the old part" not in did]
    why = f"<small>{_text('; '.join(changed))}</small>" if changed else ""
    return [
        _text(item.reference),
        _text(_short(item.old.text, 60)),
        _text(item.new) + why,
        _text(item.polarity),
        "".join(f"<small>{_text(look)}</small>" for look in item.looks),
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
            _text(item.reference),
            f'<span class="source">{_text(_short(plan.source(item)))}</span>',
            _text("; ".join((item.why, *item.looks))),
            str(item.line),
        ]
        for item in items
    ]
    hazards = dict.fromkeys(key for item in items for key in item.cautions)
    titles = " ".join(f"{HAZARDS[key].title}." for key in hazards)
    caution = f'<p class="caution"><strong>CAUTION: {_text(titles)}</strong> ' if titles else ""
    caution += "What to do stands on the first page.</p>" if titles else ""
    table = _table([*headings, ("tick", "Settled")], [[*row, BOX] for row in rows])
    return f"<h2>{_text(title)}</h2>{caution}{table}"


def _unreadable(plan: Plan) -> str:
    if not plan.unreadable:
        return ""
    headings = [("line", "List line"), ("", "Text"), ("", "Why"), ("tick", "Settled")]
    rows = [
        [
            str(line.line),
            f'<span class="source">{_text(_short(line.text))}</span>',
            _text(line.why),
            BOX,
        ]
        for line in plan.unreadable
    ]
    return f"<h2>Lines that could not be read</h2>{_table(headings, rows)}"


def _listed(title: str, texts: list[str]) -> str:
    if not texts:
        return ""
    return f"<h2>{_text(title)}</h2>" + "".join(f"<p>{_text(text)}</p>" for text in texts)


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
        f"<dt>{_text(name)}</dt><dd>{_text(RULES[name][0])} "
        f"<small>Source: {_text(source(RULES[name][1]).how)}.</small></dd>"
        for name in RULES
        if name in used
    )
    return f'<h2>The rules behind this plan</h2><dl class="rules">{entries}</dl>' if used else ""


def _short(text: str, limit: int = 120) -> str:
    text = " ".join(text.split())
    return text if len(text) <= limit else text[:limit] + "…"
