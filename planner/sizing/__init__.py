"""The sizing problem: its records here, its exact JSON form in reading.py and writing.py."""
