"""Django's SQLite with a queue before the writers' lock: who came first writes first.

`base.py` is the database backend (ENGINE "apiary.sqlite"), `queue.py` the queue. SQLite alone lets waiting writers
look again now and then, and whoever looks at the right moment is in.
"""
