"""Each member's word is on a strip of its own, and no strip is torn."""

from repairlib.core.html import text
from repairlib.learn.group import Group, Member
from repairlib.teach.paper.word_strips import word_strips

GROUP = Group("Tuesday bench", tuple(Member(f"Name <{n}>", f"word{n}") for n in range(5)))


def test_every_member_has_a_strip_with_the_word():
    made = "".join(word_strips(GROUP).parts)
    assert made.count("<td") == 5 and made.count("<tr") == 3
    for one in GROUP.members:
        assert f"<p>{text(one.name)}<small>" in made and f">{one.word}</p>" in made
    assert "break-inside: avoid" in word_strips(GROUP).style
