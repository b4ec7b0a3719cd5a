"""What kind of disk a folder is on: a local one, one across the network, or a synced one.

A write-ahead log needs shared memory, which network file systems do not have, and a program
that copies files to other computers may catch the log and the file apart. There the store does
without the log and says so.
"""

import os
import re
import subprocess
import sys
from enum import StrEnum
from pathlib import Path, PurePath, PureWindowsPath

#: How mountinfo writes blanks and the like.
_OCTAL = re.compile(r"\\([0-7]{3})")


class DiskKind(StrEnum):
    LOCAL = "local"
    NETWORK = "network"
    SYNCED = "synced"


#: File systems that are not on this computer, as Linux and macOS name them.
_NETWORK_SYSTEMS = frozenset(
    (
        *("nfs", "nfs4", "cifs", "smb3", "smbfs", "afpfs", "webdav", "davfs", "9p", "afs"),
        *("drvfs", "vboxsf", "prl_fs", "ceph", "glusterfs", "lustre", "gpfs", "beegfs", "coda"),
        *("fuse.davfs2", "fuse.sshfs", "fuse.rclone", "fuse.vmhgfs-fuse", "fuse.glusterfs"),
        *("fuse.s3fs", "fuse.gvfsd-fuse"),
    )
)

#: Beginnings of folder names, lower case, that programs for syncing use.
_SYNCED_FOLDERS = (
    "dropbox",
    "onedrive",
    "google drive",
    "googledrive",
    "icloud drive",
    "iclouddrive",
    "mobile documents",
    "cloudstorage",
    "nextcloud",
    "owncloud",
    "pcloud",
    "box sync",
    "syncthing",
)


def disk_kind(folder: Path) -> DiskKind:
    """Return the kind of disk of a folder, which need not exist yet; LOCAL when in doubt."""
    folder = Path(os.path.realpath(folder))
    if sys.platform == "win32":
        kind = classify(PureWindowsPath(folder), {})
        return DiskKind.NETWORK if _windows_drive_is_remote(folder) else kind
    return classify(folder, _mounts())


def classify(folder: PurePath, mounts: dict[str, str]) -> DiskKind:
    """Return the kind of disk of a resolved path.

    Parameters
    ----------
    mounts
        File system by mount point, such as ``{"/": "ext4", "/home/share": "nfs4"}``.
    """
    if isinstance(folder, PureWindowsPath) and folder.drive.startswith("\\\\"):
        return DiskKind.NETWORK
    for place in (folder, *folder.parents):
        system = mounts.get(str(place))
        if system is not None:
            if system in _NETWORK_SYSTEMS:
                return DiskKind.NETWORK
            break
    if any(part.lower().startswith(_SYNCED_FOLDERS) for part in folder.parts):
        return DiskKind.SYNCED
    return DiskKind.LOCAL


def mounts_of_linux(table: str) -> dict[str, str]:
    """Return file system by mount point from the text of /proc/self/mountinfo."""
    mounts = {}
    for line in table.splitlines():
        before, _, after = line.partition(" - ")
        fields, kinds = before.split(), after.split()
        if len(fields) > 4 and kinds:
            point = _OCTAL.sub(lambda match: chr(int(match[1], 8)), fields[4])
            mounts[point] = kinds[0]
    return mounts


def mounts_of_macos(table: str) -> dict[str, str]:
    """Return file system by mount point from what /sbin/mount prints."""
    mounts = {}
    for line in table.splitlines():
        _, _, rest = line.partition(" on ")
        point, bracket, options = rest.rpartition(" (")
        if bracket:
            mounts[point] = options.split(",")[0].rstrip(")")
    return mounts


def _mounts() -> dict[str, str]:
    try:
        if sys.platform == "darwin":
            listed = subprocess.run(
                ["/sbin/mount"], capture_output=True, text=True, timeout=5, check=True
            )
            return mounts_of_macos(listed.stdout)
        return mounts_of_linux(Path("/proc/self/mountinfo").read_text("utf-8", "replace"))
    except (OSError, subprocess.SubprocessError):
        return {}


def _windows_drive_is_remote(folder: Path) -> bool:
    if sys.platform != "win32":
        return False
    import ctypes

    remote = 4  # DRIVE_REMOTE of GetDriveTypeW
    kind: int = ctypes.windll.kernel32.GetDriveTypeW(folder.anchor)
    return kind == remote
