"""What stands where in the folder of a hub."""

CONFIGURATION = "jupyterhub_config.py"
CHANGES = "changes.py"  # the instructor's own settings, read last
LEARNERS = "learners"  # a home for each, mode 0700
HANDED_IN = "handed-in"  # in it a folder for each, which that learner and instructors can enter
FONTS = "fonts"  # matplotlib's list of the fonts here, made once
INSIDE = "hub"  # what the hub keeps: its database and its keys, mode 0700
WARM = "warm"  # in it: the socket of the warm process
PASSWORDS = "passwords.txt"  # to cut into slips, mode 0600

# Of a home's path. The system gives a socket's path 107 bytes; the rest is taken by
# `/workbook/run/kernel-`, 36 signs that name a kernel, and `-ipc-5`.
LONGEST_HOME = 107 - 64
