"""The planner's addresses: seasons and their answers, runs and their orders."""

urlpatterns = []
