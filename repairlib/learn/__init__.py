"""Graded exercises: questions, variants, marking, saved answers.

How to write the exercise of a lesson
-------------------------------------
1. Make `repairlib/learn/<subject>.py` with one function `questions(draw)` that returns six to
   ten questions, and put the lesson's name in `LESSONS` in `exercise.py`::

    from repairlib.learn import Choice, Mistake, Number, Order, Table, before

    def questions(draw):
        return [stripe(draw.part("q1")), ...]      # one small function per question

    def film_code(draw):
        code, farad = draw.pick([("473", 47e-9), ("224", 220e-9)])
        return Number(
            id="q1", points=2, unit="F", answer=farad, tolerance=0.01,
            prompt="The marking is partly rubbed off. What is the capacitance?",
            picture=lambda: draw_part("film box", code),     # import drawings inside a function
            mistakes=[Mistake(farad * 1000, "The code counts in pF, not in nF.")],
            hint="Third figure: how many zeros?",            # when no mistake explains the answer
        )

2. Every argument is named. Values are SI floats (volts, farads, ohms); % and °C stay as they are.
   Type the answers in by hand from the source; never work them out with the code that is taught.
3. Kinds: `Number(answer, unit, tolerance=0.01, margin=0)`; `Choice(options, answer)`, give the
   options as `draw.shuffle([...])`; `Order(steps, shown)` with `steps` in the right order and
   `shown=draw.shuffle(steps)`; `Table(cells={row: {column: Number(...) or Choice(...)}})`, cells
   without id, prompt and points. Order and Table give an equal share for each place or cell.
   A judgement on a drawn part is a Choice or Number with a `picture`.
4. `Mistake(when, hint)`: `when` is the wrong answer itself or a function of the answer (a float,
   an option's text, the list of steps: `before("touch", "measure")`). All that fit are told.
   A hint says what to look at again and never gives the answer away. Number finds a factor of
   ten or of 1000 by itself.
5. `Mistake(when, hint, danger=True, hazard="stored charge")` for answers that could hurt someone:
   told at once, and the question gets no points, whatever the number.
6. `draw.part("q1")` gives each question its own draw: pick, integer, shuffle, sample.
7. In prompts an empty line starts a new paragraph and `backticks` mark what stands on a part.
8. Answers worked by hand go to tests/answered/<lesson>-right.json and -wrong.json.

Unmarked practice: `from repairlib.faces.panels import practice`, then `practice([Number(...)])` or
 `practice(questions_function)` shows the same questions with feedback; nothing is saved.

Importing this package brings no notebook or table library.
"""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    arranging="Order Table before",
    draws="Draw",
    exercise="Exercise LESSONS mark_file open_exercise questions_of warm_up",
    learner="DEMO Learner current_learner set_learner",
    marking="Sheet mark",
    question="Choice Mistake Number Question",
)
