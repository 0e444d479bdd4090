"""What stands on which page of a sheet once it is laid out: what is torn, what is alone, how small.

It looks at the boxes that the layout made, before they become PDF.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

KEPT_WHOLE = ("tr", "img", "li")


def boxes_of(page) -> Iterator:
    """Every box on a page with the element that it was made for."""
    for box in page._page_box.descendants():
        if box.element is not None:
            yield box


def torn(document) -> list[str]:
    """The elements that must stay whole and stand on more than one page, in words."""
    pages: dict[int, set[int]] = defaultdict(set)
    named = {}
    for number, page in enumerate(document.pages, 1):
        for box in boxes_of(page):
            element = box.element
            heads = box.element_tag == "tr" and element.find("th") is not None
            repeated = heads and element.find("td") is None  # a head comes again on each page
            looks = element.get("class", "").split()
            whole = element.tag in KEPT_WHOLE or {"caution", "question", "permit"} & set(looks)
            if whole and not repeated:
                pages[id(element)].add(number)
                named[id(element)] = "".join(element.itertext())[:60] or element.tag
    return [named[one] for one, on in pages.items() if len(on) > 1]


def last_words(page) -> tuple[str, str]:
    """What stands lowest on a page, a line or a drawing: the tag it belongs to, and its words."""
    lines = [
        box
        for box in boxes_of(page)
        if getattr(box, "text", "").strip() or box.element_tag == "img"
    ]
    body = [box for box in lines if not box.element_tag.startswith("@")]
    lowest = max(body, key=lambda box: box.position_y)
    return lowest.element_tag, getattr(lowest, "text", "")


def smallest_letters(document) -> float:
    """The smallest letters of running text, in points."""
    return (
        min(
            box.style["font_size"]
            for page in document.pages
            for box in boxes_of(page)
            if getattr(box, "text", "").strip() and box.element_tag != "sup"
        )
        * 0.75
    )  # from CSS pixels


def outside(document) -> list[str]:
    """Pictures and words that stand out of the page to the right, or below it."""
    found = []
    for page in document.pages:
        for box in boxes_of(page):
            seen = getattr(box, "text", "").strip() or box.element_tag == "img"
            right = box.position_x + (box.width if isinstance(box.width, float | int) else 0)
            low = box.position_y + (box.height if isinstance(box.height, float | int) else 0)
            if seen and (right > page.width - 15 or low > page.height - 15):
                found.append(getattr(box, "text", "") or box.element.get("alt", "")[:40])
    return found
