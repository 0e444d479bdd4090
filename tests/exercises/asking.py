"""What the tests of all exercises share: many variants, and how an answer is taken."""

from repairlib.exercises import Draw

VARIANTS = [Draw(f"variant {number}") for number in range(80)]


def asked(ask):
    """The prompt with plain spaces."""
    return ask.prompt.replace("\xa0", " ")


def hazards(ask, typed):
    """The hazards told for an unsafe answer, or None for one that is not unsafe."""
    judged = ask.judge(typed)
    return judged.hazards if judged.state == "unsafe" else None


def told(ask, typed):
    """What is said of a wrong answer."""
    judged = ask.judge(typed)
    assert judged.state == "wrong"
    return " ".join(judged.says)
