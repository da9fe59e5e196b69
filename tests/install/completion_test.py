"""Completions as the shells themselves work them out.

completion_test.py FOLDER"""

import pathlib
import pty
import os
import select
import shutil
import subprocess
import sys
import tempfile
import time
import unittest

FOLDER = pathlib.Path(sys.argv[1]).resolve()


class Terminal:
    """A shell at a terminal of 200 columns, fed by keys."""

    def __init__(self, arguments, environment):
        self.pid, self.fd = pty.fork()
        if self.pid == 0:
            os.execvpe(arguments[0], arguments, {**os.environ, "TERM": "dumb", "COLUMNS": "200", **environment})

    def type(self, keys, until, seconds=20):
        os.write(self.fd, keys)
        text, end = "", time.monotonic() + seconds
        while until not in text and time.monotonic() < end:
            if select.select([self.fd], [], [], 0.2)[0]:
                try:
                    text += os.read(self.fd, 65536).decode(errors="replace").replace("\a", "")
                except OSError:
                    break
        return text

    def close(self):
        os.close(self.fd)
        os.kill(self.pid, 9)
        os.waitpid(self.pid, 0)


class Completion(unittest.TestCase):
    def need(self, shell):
        if not shutil.which(shell):
            self.skipTest(f"no {shell}")

    def check_typed(self, shell):
        """A command, an option and a word of it, each begun and finished by the tabulator."""
        try:
            shell.type(b"", "ready> ")
            self.assertIn("cutback schedule", shell.type(b"cutback sched\t", "schedule"))
            self.assertIn("--armour-material", shell.type(b"\x15cutback fit --armour-mat\t", "--armour-material"))
            self.assertIn("braid", shell.type(b"\x15cutback fit --armour br\t", "braid"))
        finally:
            shell.close()

    def test_bash(self):
        with tempfile.TemporaryDirectory() as room:
            rc = pathlib.Path(room) / "rc"
            rc.write_text(f"source {FOLDER}/cutback.bash; PS1='ready> '; bind 'set bell-style none'\n")
            self.check_typed(Terminal(["bash", "--noprofile", "--rcfile", str(rc), "-i"], {"HOME": room}))

    def test_zsh(self):
        self.need("zsh")
        with tempfile.TemporaryDirectory() as room:
            (pathlib.Path(room) / ".zshrc").write_text(
                f"fpath=({FOLDER} $fpath); autoload -Uz compinit; compinit -u -D; PS1='ready> '\n")
            self.check_typed(Terminal(["zsh", "-i"], {"HOME": room, "ZDOTDIR": room}))

    def test_fish(self):
        self.need("fish")

        def complete(line):
            with tempfile.TemporaryDirectory() as room:
                done = subprocess.run(["fish", "--no-config", "-c", f"source {FOLDER}/cutback.fish; complete -C '{line}'"],
                                      capture_output=True, text=True, check=True, env={**os.environ, "HOME": room})
            return [each.split("\t")[0] for each in done.stdout.splitlines()]

        self.assertEqual(complete("cutback sched"), ["schedule"])
        self.assertIn("--armour-material", complete("cutback fit --armour-mat"))
        self.assertEqual(complete("cutback fit --armour br"), ["braid"])
        self.assertEqual(complete("cutback glands new --no-such"), [])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
