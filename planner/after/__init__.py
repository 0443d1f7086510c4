"""What follows the order: hauling by week, assembling by evening, feed, pulling; checked on many seasons. Pure."""
