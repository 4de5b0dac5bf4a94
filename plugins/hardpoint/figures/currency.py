"""How current and how complete a record is: counts as of a day, never a share of something.

Counted are the questions that nobody has answered (an answer "unknown", and what was left out where silence means
unknown), the answers that are there, the sections that nobody has checked, and those past the day on which they have
to be looked at again. A record without an unknown is not complete: the list of questions may be short of the truth.
"""
