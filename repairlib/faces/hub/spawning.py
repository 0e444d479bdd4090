"""A learner's server is started as that learner's user, and held to a share of the machine."""

from __future__ import annotations

import asyncio

from jupyterhub.spawner import LocalProcessSpawner
from jupyterhub.utils import random_port
from traitlets import Unicode

from repairlib.faces.hub.warm import LENGTH, request

MOST_THREADS = 250  # of one learner: a server and three lessons have fewer than 100
BETWEEN_TRIES_S = 0.1


class LearnersServer(LocalProcessSpawner):
    """The spawner of JupyterHub for users of the system, with `mem_limit` held by the system.

    The limit is one of each process: the server and each lesson. A lesson that wants more is told
    so by Python (MemoryError) and goes on; the others in the room notice nothing.
    """

    warm_socket = Unicode(config=True, help="where the warm process listens")

    async def start(self):
        """Have the warm process fork this learner's server; its address and port."""
        self.port = self.port or random_port()
        limits = {"RLIMIT_NPROC": MOST_THREADS, "RLIMIT_CORE": 0}
        if self.mem_limit:
            limits["RLIMIT_DATA"] = self.mem_limit
        asked = request(self.user.name, self.get_env(), self.get_args(), limits)
        answers, questions = await self._warm()
        questions.write(asked)
        (self.pid,) = LENGTH.unpack(await answers.readexactly(LENGTH.size))
        questions.close()
        return (self.ip or "127.0.0.1", self.port)

    async def _warm(self):
        """A connection to the warm process; JupyterHub ends the wait after `start_timeout`."""
        while True:
            try:
                return await asyncio.open_unix_connection(self.warm_socket)
            except (FileNotFoundError, ConnectionRefusedError):  # it is just starting
                await asyncio.sleep(BETWEEN_TRIES_S)
