"""So many lessons at a time for each learner: a lesson that runs holds its memory."""

from __future__ import annotations

from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager
from tornado.web import HTTPError
from traitlets import Integer

TOO_MANY = "{} lessons are open. Close the tab of one, and open this one again."


class FewKernels(AsyncMappingKernelManager):
    """Starts no more than `most` kernels; one whose lesson nobody looks at makes room."""

    most = Integer(3, config=True, help="how many lessons may run at a time")

    async def start_kernel(self, **options):
        """As of old, once there is room; else a refusal that JupyterLab shows to the learner."""
        if len(self) >= self.most:
            await self._make_room()
        return await super().start_kernel(**options)

    async def _make_room(self) -> None:
        alone = [one for one in self.list_kernel_ids() if not self._kernel_connections.get(one)]
        if not alone:
            raise HTTPError(503, TOO_MANY.format(self.most), reason="Close a lesson first")
        oldest = min(alone, key=lambda one: self._kernels[one].last_activity)
        await self.shutdown_kernel(oldest)
