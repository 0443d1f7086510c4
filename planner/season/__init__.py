"""The season as the planner sees it: the operation's facts, the keeper's assumptions, the scenarios."""
