"""Things to print: the bench sheet of a recap plan."""

from repairlib.printing.bench_sheet import bench_sheet, write_bench_sheet

__all__ = ["bench_sheet", "write_bench_sheet"]
