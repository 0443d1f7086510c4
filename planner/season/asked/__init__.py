"""The questions, a file a subject: rows of data, no arithmetic."""
