"""Graded exercises: questions, variants, marking, saved answers.

How to write the exercise of a lesson
-------------------------------------
1. Make `repairlib/learn/questions/<lesson>.py` and put the lesson's name in `LESSONS` in
   `exercise.py`. Each question, six to ten of them, is a small function under `@question`::

    from repairlib.learn.asking import practice_question, question
    from repairlib.core.draws import Draw
    from repairlib.learn.question import Mistake, Number

    @question(points=2)
    def film_code(draw: Draw) -> Number:
        code, farad = draw.pick([("473", 47e-9), ("224", 220e-9)])
        return Number(
            unit="F", answer=farad, tolerance=0.01,
            prompt="The marking is partly rubbed off. What is the capacitance?",
            picture=lambda: draw_part("film box", code),     # import drawings inside a function
            mistakes=[Mistake(farad * 1000, "The code counts in pF, not in nF.")],
            hint="Third figure: how many zeros?",            # when no mistake explains the answer
        )

   The first one becomes q1, and so on. Its draw (pick, integer, shuffle, sample) hangs on the
   function's name: a question that is added or moved leaves the variants of the others alone.
   `@practice_question` enters a question to practise on before the exercise, unmarked.
2. Banks grow at their end: the printed lessons (the demo variant) take the first of each bank.
   Every change to what is asked shows on old sheets as "changed"; it is never marked in silence.
3. Every argument is named. Values are SI floats (volts, farads, ohms); % and °C stay as they are.
   Type the answers in by hand from the source. Work one out with the code that is taught only
   where the tests hold every variant against figures that were worked by hand.
4. Kinds: `Number(answer, unit, tolerance=0.01, margin=0)`; `Choice(options, answer)`, give the
   options as `draw.shuffle([...])`; `Order(steps, shown)` with `steps` in the right order and
   `shown=draw.shuffle(steps)`; `Table(cells={row: {column: Number(...) or Choice(...)}})`, cells
   without prompt. Order and Table give an equal share for each place or cell.
   A judgement on a drawn part is a Choice or Number with a `picture`.
5. `Mistake(when, hint)`: `when` is the wrong answer itself or a function of the answer (a float,
   an option's text, the list of steps: `before("touch", "measure")`). All that fit are told.
   A hint says what to look at again and never gives the answer away. Number finds a factor of
   ten or of 1000 by itself.
6. `Mistake(when, hint, hazard="stored charge")` for answers that could hurt someone: told at
   once, and the question gets no points, whatever the number.
7. In prompts an empty line starts a new paragraph and `backticks` mark what stands on a part.
8. `tests/learn/test_every_question.py` walks all lessons as they are drawn for many learners.
   Answers worked by hand go to tests/answered/<lesson>-right.json and -wrong.json.

Unmarked practice: `from repairlib.faces.panels import practice`, then `practice([Number(...)])` or
 `practice(questions_function)` shows the same questions with feedback; nothing is saved.

Importing this package brings no notebook or table library.
"""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    arranging="Order Table before",
    delivering="hand_in_work",
    exercise="Exercise LESSONS lessons_known mark_file open_exercise questions_of warm_up",
    kept_work="KeptWork",
    learner="DEMO Learner current_learner member_of set_learner",
    marking="Sheet mark",
    question="Choice Mistake Number Question",
    words="explain",
)
