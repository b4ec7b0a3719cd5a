"""Which folders count as local, as across the network, as synced."""

from pathlib import Path, PurePath, PurePosixPath, PureWindowsPath

import pytest

from measure.storage import connection
from measure.storage.disk_kind import (
    DiskKind,
    classify,
    disk_kind,
    mounts_of_linux,
    mounts_of_macos,
)
from measure.storage.store import Store
from tests.support import record_samples as sample

_LINUX = r"""
22 1 254:0 / / rw,relatime shared:1 - ext4 /dev/vda1 rw
40 22 0:45 / /mnt/clinic rw shared:2 - nfs4 server:/share rw,vers=4.2
41 22 0:46 / /mnt/two\040words rw - cifs //server/share rw
42 22 0:47 / /media/stick rw - vfat /dev/sdb1 rw
43 22 0:48 / /home/rosa/far rw - fuse.sshfs rosa@far: rw
44 40 0:49 / /mnt/clinic/local rw - xfs /dev/sdc1 rw
broken line
"""
_MACOS = """\
/dev/disk3s1s1 on / (apfs, sealed, local, read-only, journaled)
//rosa@server/share on /Volumes/share (smbfs, nodev, nosuid, mounted by rosa)
/dev/disk4s1 on /Volumes/A (1) (msdos, local, nodev)
"""


@pytest.mark.parametrize(
    ("folder", "kind"),
    [
        (PurePosixPath("/home/rosa/.local/share/thawline"), DiskKind.LOCAL),
        (PurePosixPath("/mnt/clinic"), DiskKind.NETWORK),
        (PurePosixPath("/mnt/clinic/data/deep"), DiskKind.NETWORK),
        (PurePosixPath("/mnt/clinic/local/data"), DiskKind.LOCAL),
        (PurePosixPath("/mnt/clinical"), DiskKind.LOCAL),
        (PurePosixPath("/mnt/two words/x"), DiskKind.NETWORK),
        (PurePosixPath("/media/stick"), DiskKind.LOCAL),
        (PurePosixPath("/home/rosa/far/x"), DiskKind.NETWORK),
        (PurePosixPath("/home/rosa/Dropbox/x"), DiskKind.SYNCED),
        (PurePosixPath("/home/rosa/Nextcloud"), DiskKind.SYNCED),
        (PurePosixPath("/Users/rosa/Library/Mobile Documents/x"), DiskKind.SYNCED),
        (PurePosixPath("/Users/rosa/Library/CloudStorage/OneDrive-Home"), DiskKind.SYNCED),
        (PureWindowsPath(r"C:\Users\rosa\AppData\Local\thawline"), DiskKind.LOCAL),
        (PureWindowsPath(r"\\server\share\thawline"), DiskKind.NETWORK),
        (PureWindowsPath(r"C:\Users\rosa\OneDrive - Clinic\x"), DiskKind.SYNCED),
    ],
)
def test_folders(folder: PurePath, kind: DiskKind) -> None:
    assert classify(folder, mounts_of_linux(_LINUX)) is kind


def test_mounts_of_macos() -> None:
    assert mounts_of_macos(_MACOS) == {
        "/": "apfs",
        "/Volumes/share": "smbfs",
        "/Volumes/A (1)": "msdos",
    }


def test_a_link_into_a_synced_folder_is_seen_through(tmp_path: Path) -> None:
    (tmp_path / "Dropbox").mkdir()
    (tmp_path / "plain").symlink_to(tmp_path / "Dropbox")
    assert disk_kind(tmp_path / "plain" / "thawline") is DiskKind.SYNCED
    assert disk_kind(tmp_path / "other") is DiskKind.LOCAL


@pytest.mark.parametrize("kind", [DiskKind.NETWORK, DiskKind.SYNCED])
def test_elsewhere_the_store_does_without_a_log_and_says_so(
    kind: DiskKind, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "sessions.sqlite"
    Store.open(path).close()
    monkeypatch.setattr(connection, "disk_kind", lambda folder: kind)
    with Store.open(path) as store:
        store.save_person(sample.person())
        assert not path.with_name("sessions.sqlite-wal").exists()
        assert any(
            "on this computer" in each or "of this computer" in each for each in store.warnings
        )
    monkeypatch.setattr(connection, "disk_kind", lambda folder: DiskKind.LOCAL)
    with Store.open(path) as store:
        assert len(store.people()) == 1
        assert path.with_name("sessions.sqlite-wal").exists()
