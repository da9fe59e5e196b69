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
    with open(path + ".torn") as file:
        check('"TORN","motor"' in file.read(), "what was left of it is gone")
    with open(path, "a") as file:
        file.write('HAND,motor,,,ARM,,,,,,,,,,by hand')  # without its line end
    check(start(path, "AFTER").wait() == 0 and {"HAND", "AFTER"} <= set(rows(path)), "a row by hand was lost")


def saved_by_a_spreadsheet(path):
    header = ("tag,end,made_at,by,part,batch,sheath_od_mm,bedding_mm,armour_mm,drum,torque_nm,armour_ohm,"
              "insulation_mohm,test_v,remark\r\n")
    with open(path, "wb") as file:
        file.write(b"\xef\xbb\xbf" + header.encode() + b"A-1,from,2026-03-31,,G,,,,,,,,,,\r\n")
    check(start(path, "A-2").wait() == 0 and set(rows(path)) == {"A-1", "A-2"}, "no row behind a byte order mark")


def a_day_a_unit_a_name(path):
    def made(*words):
        return subprocess.run([program, "made", path, *words], env=environment, capture_output=True, text=True)

    check(made("--tag", "P-201", "--end", "from", "--part", "ARM", "--torque", "25Nm").returncode == 0, "with a unit")
    check(rows(path)["P-201"]["torque_nm"] == "25", "the figure alone is kept")
    bad = made("--tag", "P-202", "--end", "from", "--made-at", "2026-13-45")
    check(bad.returncode == 2 and "no day of the calendar" in bad.stderr, bad.stderr)
    later = made("--tag", "P-202", "--end", "from", "--made-at", "2030-01-01")
    check("is a day to come" in later.stderr, later.stderr)  # today is 1970-01-01 here
    same = made("--tag", "p-201", "--end", "FROM", "--part", "ARM")
    check(same.returncode == 0 and "p-201, FROM is taken for P-201, from" in same.stderr, same.stderr)
    other = made("--tag", "P 201", "--end", "from", "--part", "ARM")
    check(other.returncode == 2 and "P-201, from" in other.stderr, other.stderr)
    check(set(rows(path)) == {"P-201"}, "a refused row was written")


with tempfile.TemporaryDirectory() as folder:
    register = os.path.join(folder, "made.csv")
    killed_and_two_at_once(register)
    a_torn_row_is_taken_away(register)
    saved_by_a_spreadsheet(os.path.join(folder, "sheet.csv"))
    a_day_a_unit_a_name(os.path.join(folder, "small.csv"))
