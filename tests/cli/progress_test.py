"""The bar that `cutback schedule` draws on a terminal, looked at through a pseudo-terminal.

Whatever the machine's speed, the work takes longer than the second after which the bar appears: the
results are not taken from stdout before."""

import os
import pathlib
import pty
import re
import select
import subprocess
import sys
import tempfile
import threading
import time
import unittest

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
GLANDS = SOURCE / "tests/cli/fit/two_glands.csv"
ROWS = 20000  # far more results than a pipe holds
WAIT_S = 1.3
HEAD = b"tag,armour,sheath_od_mm,bedding_mm,armour_mm,entry\n"
TABLE = HEAD + b"".join(b"P-%d,wire,15,10,0.9,M20\n" % i for i in range(ROWS))


def terminal_text(arguments, stdin=subprocess.DEVNULL, feed=None, terminal=True):
    """@return what comes on stderr, and the lines of the results"""
    try:
        own, other = pty.openpty() if terminal else os.pipe()
    except OSError as error:  # as where /dev/pts is not mounted
        raise unittest.SkipTest(f"no pseudo-terminal on this machine: {error}") from error
    child = subprocess.Popen(
        [PROGRAM, "schedule", *map(str, arguments), "--glands", str(GLANDS)],
        stdin=subprocess.PIPE if feed else stdin, stdout=subprocess.PIPE, stderr=other,
        env={"LC_ALL": "C.UTF-8", "TZ": "UTC", "PATH": os.environ["PATH"]})
    os.close(other)
    texts = []

    def take_text():
        while True:
            try:
                piece = os.read(own, 65536)
            except OSError:  # a terminal's way to say that nobody writes any more
                return
            if not piece:
                return
            texts.append(piece)
    threads = [threading.Thread(target=take_text)]
    if feed:
        def give():
            with child.stdin as pipe:
                pipe.write(feed)
        threads.append(threading.Thread(target=give))
    for thread in threads:
        thread.start()
    select.select([child.stdout], [], [])  # it has begun
    time.sleep(WAIT_S)
    lines = child.stdout.read().count(b"\n")
    child.stdout.close()
    child.wait()
    for thread in threads:
        thread.join()
    os.close(own)
    return b"".join(texts).decode(), lines


class Bar(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.path = pathlib.Path(self.folder.name) / "cables.csv"
        self.path.write_bytes(TABLE)

    def check_cleared(self, text):
        """The last thing that happens to the bar's line: it is made blank."""
        self.assertRegex(text, r"\r {76}\r")
        self.assertNotRegex(text.rpartition(" " * 76 + "\r")[2], "rows/s")

    def test_file(self):
        text, lines = terminal_text([self.path])
        self.assertEqual(lines, ROWS + 1)
        bars = re.findall(r"\r\[(#*)(\.*)\] ([0-9]+) rows/s, ([0-9]+) s left   ", text)
        self.assertGreater(len(bars), 0, text)
        parts = [len(done) for done, _, _, _ in bars]
        self.assertEqual(parts, sorted(parts))
        for done, rest, rate, _ in bars:
            self.assertEqual(len(done) + len(rest), 30)
            self.assertGreater(int(rate), 0)
            self.assertLess(int(rate), ROWS)  # in more than a second
        self.check_cleared(text)

    def test_pipe(self):
        """Without a length there is no bar and no time left, only the count and the rate."""
        text, lines = terminal_text(["-"], feed=TABLE)
        self.assertEqual(lines, ROWS + 1)
        counts = [int(count) for count in re.findall(r"\r([0-9]+) rows, [0-9]+ rows/s   ", text)]
        self.assertGreater(len(counts), 0, text)
        self.assertEqual(counts, sorted(counts))
        self.assertLessEqual(counts[-1], ROWS)
        self.assertNotIn(" s left", text)
        self.check_cleared(text)

    def test_none_when_quiet(self):
        text, lines = terminal_text([self.path, "--quiet"])
        self.assertEqual((text, lines), ("", ROWS + 1))

    def test_none_without_a_terminal(self):
        text, lines = terminal_text([self.path], terminal=False)
        self.assertEqual(lines, ROWS + 1)
        self.assertNotIn("\r", text)
        self.assertNotIn("rows/s", text)
        self.assertIn("ends", text)  # the summary


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0]], verbosity=1)
