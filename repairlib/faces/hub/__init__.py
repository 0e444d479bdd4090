"""The workbook on a notebook server: one JupyterHub, a user of the system for each member.

    setting_up.py   the folder of the hub, its configuration, what stands in it
    *.template      what it writes: for this computer; on paper, for a thousand in containers
    users.py        the users of the system: which calls make them and which take them away
    spawning.py     starts a learner's server as that user, within its limits
    warm.py         has JupyterLab imported, and forks the servers
    served.py       what is started: the lessons' JupyterLab, of this learner
    kernels.py      so many lessons at a time

JupyterHub itself is no part of the requirements: who runs a hub installs it.
"""

from repairlib.faces.hub.setting_up import set_up

__all__ = ["set_up"]
