"""The belief check at work: two children that plan again and again, kept to their time, ended with the run."""
