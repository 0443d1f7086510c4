"""An evening's catching up: many acts of past days told in one table, booked all together or not at all."""
