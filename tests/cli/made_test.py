"""The register of finished ends while its writers are killed, and with two at once.

usage: made_test.py PROGRAM
"""
import json
import os
import random
import subprocess
import sys
import tempfile
import threading
import time

program = os.path.abspath(sys.argv[1])
environment = dict(os.environ, LC_ALL="C.UTF-8", XDG_CONFIG_HOME="/nonexistent", SOURCE_DATE_EPOCH="0")
REMARK = "made off at the bench, " * 40 + "whole"
random.seed(7)


def check(condition, what):
    if not condition:
        sys.exit(what)


def start(path, tag):
    return subprocess.Popen([program, "made", path, "--tag", tag, "--end", "motor", "--part", "ARM", "--remark",
                             REMARK, "--quiet"], env=environment, stdout=subprocess.DEVNULL,
                            stderr=subprocess.DEVNULL)


def rows(path):
    done = subprocess.run([program, "made", path, "--json"], env=environment, capture_output=True, text=True)
    check(done.returncode == 0, f"the register cannot be read: {done.stderr}")
    return {row["tag"]: row for row in json.loads(done.stdout)["finished"]}


def killed_and_two_at_once(path):
    told = set()
    lock = threading.Lock()

    def writer(name, count):
        for i in range(count):
            tag = f"{name}-{i}"
            process = start(path, tag)
            if i % 2 == 0:
                time.sleep(random.random() * 0.02)
                process.kill()
            if process.wait() == 0:
                with lock:
                    told.add(tag)

    threads = [threading.Thread(target=writer, args=(name, 200)) for name in ("A", "B")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    found = rows(path)
    check(len(told) >= 200, f"too few were written: {len(told)}")
    lost = told - set(found)
    check(not lost, f"lost: {sorted(lost)}")
    for tag, row in found.items():
        check(row["remark"] == REMARK and row["made_at"] == "1970-01-01", f"half written: {tag}")


def a_torn_row_is_taken_away(path):
    with open(path) as file:
        whole = file.read()
    with open(path, "a") as file:
        file.write('"TORN","motor","1970-01-01","","ARM","","","","","","","","","","made of')
    check("TORN" not in rows(path), "a torn row counts")
    check(start(path, "NEXT").wait() == 0, "nothing can be added")
    with open(path) as file:
        check(file.read().startswith(whole), "what was written before was changed")
    check("NEXT" in rows(path) and "TORN" not in rows(path), "the torn row stayed")
    with open(path, "a") as file:
        file.write('HAND,motor,,,ARM,,,,,,,,,,by hand')  # without its line end
    check(start(path, "AFTER").wait() == 0 and {"HAND", "AFTER"} <= set(rows(path)), "a row by hand was lost")


with tempfile.TemporaryDirectory() as folder:
    register = os.path.join(folder, "made.csv")
    killed_and_two_at_once(register)
    a_torn_row_is_taken_away(register)
