"""Kernels that end with the pages that they belong to."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager

# How long a page may take from its last cell until it is open in the browser. [s]
OPENING = 120
# How long a page that was open may be gone: a connection can break and be made again. [s]
CLOSED = 15
# How often the kernels are looked at. [s]
EVERY = 5


class LessonKernels(AsyncMappingKernelManager):
    """Ends a kernel whose page is closed, or was asked for and never opened."""

    def notify_disconnect(self, kernel_id: str) -> None:
        super().notify_disconnect(kernel_id)  # type: ignore[no-untyped-call]
        if kernel_id in self:
            spent = timedelta(seconds=OPENING - CLOSED)
            self.get_kernel(kernel_id).last_activity = datetime.now(UTC) - spent
