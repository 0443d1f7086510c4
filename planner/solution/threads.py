"""How many threads HiGHS has in this process: one, where others work beside it.

Takes and gives nothing. Its threads are set once a process, by the first that solves; later it changes nothing.
"""

import highspy


def keep_to_one_thread():
    """HiGHS uses one thread from now on, if it has not been used here: more of them spin where cores are shared."""
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.addVar(0.0, 1.0)
    solver.run()
