"""The bench sheet of a recap plan: A4, black on white, boxes to tick with a pen.

One HTML page that needs nothing else: print it from any browser, or read it on a telephone. First
what one works from, then the order on a page of its own, then what one looks up: what was measured,
rules, sources, cautions in full. What stands on it is decided in repairlib.recap; the cautions
come from repairlib.core.safety.
"""

from __future__ import annotations

from repairlib.core.html import text
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import source
from repairlib.recap import (
    NOT_YOURS,
    ORDER_RULE,
    RULES,
    Item,
    Plan,
    Saved,
    Step,
    Stop,
    route_of,
    write_whole,
)
from repairlib.show.sheets.before_work import (
    at_the_iron,
    before_work,
    head,
    set_name,
)
from repairlib.show.sheets.bench_style import BENCH_STYLE
from repairlib.show.sheets.board_sides import board_sides
from repairlib.show.sheets.sheet_pieces import BOX, caution_in_full, page, short, table
from repairlib.show.sheets.sheet_sections import measured_section, order_rules, order_section

PLACES = [("ref", "Place"), ("old", "Take out"), ("new", "Fit"), ("plus", "Plus")]
WAITS = [("ref", "Place"), ("", "As listed"), ("", "Why")]
SUPPLY_TESTED = (
    f"Then, before you go on: {BOX} plug out {BOX} discharged {BOX} measured, as in 1 to 3."
)


def bench_sheet(plan: Plan) -> str:
    """The bench sheet of the plan as one HTML page.

    >>> from repairlib.recap import plan
    >>> page = bench_sheet(plan("C1,10/16,elect\\nC2,<q>,film\\n"))
    >>> "10 µF 16 V 105 °C polar aluminium" in page.replace("\\xa0", " "), "<q>" in page
    (True, False)
    """
    title = f"Recap: {set_name(plan)}" if set_name(plan) else "Recap, bench sheet"
    work = [
        head(plan),
        before_work(plan),
        board_sides(plan),
        _fitting(plan),
        *[_step_of_others(step) for step in plan.steps if step.handed_on],
        _waiting_for_others(plan),
        _waiting(plan, "On hold: settle these before you order", plan.held),
        _waiting(plan, "Judge these one by one", plan.judged),
        _unreadable(plan),
        _listed("Named twice in the list", [str(duplicate) for duplicate in plan.duplicates]),
        _listed("On the board, but not in the list", plan.not_listed),
        _listed("How the list was read", plan.list.notes),
    ]
    to_read = [
        measured_section(plan),
        _kept(plan),
        order_rules(plan),
        f"<h2>Order of fitting</h2><p>{text(ORDER_RULE)}</p>" if plan.items else "",
        _rules(plan),
        "<h2>Cautions in full</h2>",
        *map(caution_in_full, plan.cautions),
    ]
    parts = [*work, _on_new_page([order_section(plan)]), _on_new_page(to_read)]
    return page(title, parts, title, BENCH_STYLE)


def write_bench_sheet(plan: Plan, path, overwrite: bool = False) -> Saved:
    """Write the bench sheet to an HTML file; an existing file is left alone unless `overwrite`.

    Raises RepairlibError when it exists or cannot be written; then nothing has changed.
    """
    sheet = bench_sheet(plan).encode("utf-8", "replace")
    return Saved(write_whole(path, sheet, overwrite))


def _on_new_page(parts: list[str]) -> str:
    inside = "\n".join(part for part in parts if part)
    return f'<section class="new-page">{inside}</section>' if inside else ""


def _fitting(plan: Plan) -> str:
    """What is fitted at this bench, stop by stop, a title before each step."""
    stops = iter(route_of(plan))
    rows: list[list[str]] = []
    for number, step in enumerate(plan.steps, 1):
        if step.handed_on:
            continue
        stopped = [next(stops) for _ in step.items]
        if stopped[0].before:
            rows.append([f"<b>{text(stopped[0].before)}</b> {SUPPLY_TESTED}"])
        rows.append([f"<b>{text(f'Step {number}: {step.title}')}</b>"])
        rows += [_stop_row(stop) for stop in stopped]
    if not rows:
        return ""
    table_of_work = table([*PLACES, ("tick", "Tick")], rows)
    return f"<h2>Take out and fit, in this order</h2>{at_the_iron()}{table_of_work}"


def _step_of_others(step: Step) -> str:
    rows = [_row(item) for item in step.items]
    warning = f'<p class="caution stays"><b>{text(NOT_YOURS)}</b></p>'
    title = f"{step.title[:1].upper()}{step.title[1:]}"
    return f"<h2>{text(title)}</h2>{warning}{table(PLACES, rows)}"


def _stop_row(stop: Stop) -> list[str]:
    number = f'<span class="stop">{stop.number}</span> '
    boxes = f'<span class="ticked">{BOX} plus seen</span> <span class="ticked">{BOX} fitted</span>'
    return [*_row(stop.item, number), boxes]


def _row(item: Item, number: str = "") -> list[str]:
    changed = [did for name, did in item.new.rules if name in ("made value", "voltage not below")]
    changed = [did for did in changed if "as the old part" not in did]
    part = item.selection.part if item.selection else None
    bought = f"<small>{text(part.part)}</small>" if part else ""
    told = "; ".join((*changed, *item.looks))
    looks = f"<small>{text(told)}</small>" if told else ""
    return [
        f"{number}<b>{text(item.reference)}</b><small>line {item.line}</small>",
        text(short(item.old.text, 60)),
        f"<b>{text(item.new)}</b>{bought}{looks}",
        text(item.polarity),
    ]


def _waiting(plan: Plan, title: str, items: list[Item]) -> str:
    """What waits for the reader, with a box each."""
    rows = [[*_waiting_row(plan, item), BOX] for item in items if not item.handed_on]
    return f"<h2>{text(title)}</h2>{table([*WAITS, ('tick', 'Settled')], rows)}" if rows else ""


def _waiting_for_others(plan: Plan) -> str:
    """What waits for a qualified person; it has no box."""
    items = [item for item in (*plan.held, *plan.judged) if item.handed_on]
    if not items:
        return ""
    hazards = dict.fromkeys(key for item in items for key in item.cautions)
    titles = " ".join(f"{HAZARDS[key].title}." for key in hazards)
    rows = [_waiting_row(plan, item) for item in items]
    return (
        "<h2>Not yours: these wait for a qualified person</h2>"
        f'<p class="caution stays"><b>{text(titles)}</b> What to do stands under '
        f"<i>Cautions in full</i>, at the end.</p>{table(WAITS, rows)}"
    )


def _waiting_row(plan: Plan, item: Item) -> list[str]:
    return [
        f"<b>{text(item.reference)}</b><small>line {item.line}</small>",
        f'<span class="source">{text(short(plan.source(item)))}</span>',
        text(item.told),
    ]


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
