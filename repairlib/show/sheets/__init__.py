"""Paper: the bench sheet of a plan, the files that a plan leaves, and the card of a job."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    job_card="job_sheet write_job_sheet",
    own_map="map_sheet",
    plan_files="report_boards report_plan",
    recap_sheet="bench_sheet write_bench_sheet",
)
