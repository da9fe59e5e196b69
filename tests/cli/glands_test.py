"""Lists begun and glands measured by `cutback glands`, through a pipe and at a terminal (tmux).

usage: glands_test.py PROGRAM
"""
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import xml.etree.ElementTree as xml

program = os.path.abspath(sys.argv[1])
environment = {k: v for k, v in os.environ.items() if k not in ("CUTBACK_GLANDS", "NO_COLOR", "TMUX")}
environment.update(LC_ALL="C.UTF-8", TERM="xterm", XDG_CONFIG_HOME="/nonexistent")
PACKET = ["A-20", "seals on both", "20mm", "15", "wire", "11-16", "8 to 12", "12.5", "0.9-1.25", "12", "?", "db eb",
          "Gb", "IIC", "", "66 68", "-40", "80", "brass", "3.2", "25", "1.5", "4", "11.20", "4", "10"]
PLACE = ["--od", "14.9+15.1", "--bedding", "9.9+10.1", "--wire", "0.9", "--cores", "3", "--csa", "2.5", "--entry", "M20",
         "--hole", "clearance", "--wall", "2.5", "--material", "steel"]


def run(arguments, folder, lines=()):
    return subprocess.run([program, *arguments], cwd=folder, input="".join(line + "\n" for line in lines), text=True,
                          capture_output=True, env=environment, timeout=120)


def check(condition, what, shown=""):
    if not condition:
        sys.exit(f"{what}\n{shown}")


def a_template(folder):
    done = run(["glands", "--new", "new.csv"], folder)
    check(done.returncode == 0, "no template", done.stderr)
    text = (folder / "new.csv").read_text()
    check("# outer_min_mm and outer_max_mm:" in text and "\npart,description,entry_thread," in text, "no columns", text)
    done = run(["glands", "new.csv"], folder)
    check(done.returncode == 2 and "the list has no gland" in done.stderr, "a template is no list", done.stderr)
    again = run(["glands", "--new", "new.csv"], folder)
    check(again.returncode == 0 and (folder / "new.csv").read_text() == text, "nothing told", again.stderr)
    (folder / "other.csv").write_text("name,age\nA,3\n")
    again = run(["glands", "--new", "other.csv"], folder)
    check(again.returncode == 2 and (folder / "other.csv").read_text() == "name,age\nA,3\n", "no list", again.stderr)


def off_the_packets(folder):
    second = ["A-20", "A-25", "", "M25", "15", "none", "13", "13-18", "<", "14-18", "?", "", "None", "compression"]
    done = run(["glands", "--new", "own.csv"], folder,
               ["", "<"] + PACKET + ["B-25"] + second[2:] + [""] * 14)
    check(done.returncode == 0 and "2 glands" in done.stdout, "two glands", done.stdout + done.stderr)
    check("left open it would count as a gland without this seal" in done.stdout, "which seal", done.stdout)
    check('taken: "20mm" for M20' in done.stdout, "what it is taken for", done.stdout)
    check("and a list needs it" in done.stdout and "! this is the first question" in done.stdout, "slips", done.stdout)
    check("! not a range" in done.stdout, "13 is no range", done.stdout)
    done = run(["glands", "own.csv", "--part", "B-25"], folder)
    check(done.returncode == 0 and "14 to 18 mm" in done.stdout, "the corrected range", done.stdout + done.stderr)
    # Off the packet alone it serves a place, hazardous or not.
    for place in (["--zone", "none", "--ip", "66"],
                  ["--zone", "1", "--protection", "e", "--gas-group", "IIB", "--ip", "66"]):
        done = run(["fit", *PLACE, *place, "--glands", "own.csv"], folder)
        check(done.returncode == 0 and "A-20" in done.stdout, "the list works", done.stdout + done.stderr)


def a_code_twice(folder):
    done = run(["glands", "--new", "twice.csv"], folder, PACKET + PACKET[:1])
    check("the list has this gland already" in done.stdout and "1 gland." in done.stdout, "one code twice", done.stdout)


def gone_on_with(folder):
    path = folder / "van.csv"
    done = run(["glands", "--new", "van.csv"], folder, PACKET + ["W-25", "", "M25", "15", "wire", "15-21"])
    check("begun is kept" in done.stdout and "1 gland." in done.stdout, "begun", done.stdout)
    check("# begun,part=W-25," in path.read_text(), "not kept", path.read_text())
    check(run(["glands", "van.csv"], folder).returncode == 0, "a list with a begun gland is a list")
    # What was told stands there; the inner seal is asked next, and < goes back to the outer one.
    done = run(["glands", "--new", "van.csv"], folder, ["<", "16-21", "12-17", "18", "0.9-1.25", "14", "compression",
                                                        "Ex db eb IIC Gb", "", "66", "-20", "60"] + [""] * 8)
    check("Outer seal: sheath from - to: 15 - 21" in done.stdout and "taken from the marking: level Gb, gas_group IIC" in done.stdout,
          "what was told", done.stdout)
    text = path.read_text()
    check("2 glands." in done.stdout and "# begun" not in text, "whole now", done.stdout + text)
    check(text.count("\nA-20,") == 1 and "\nW-25,,M25,15,wire,16,21,12,17,18,0.9,1.25,14,compression," in text,
          "rows", text)
    # A list of other columns in another order.
    path.write_text("outer_max_mm,part,outer_min_mm,entry_thread,armour\n16,U-1,9,M20,none\n")
    done = run(["glands", "--new", "van.csv"], folder, PACKET)
    check(path.read_text().startswith("outer_max_mm,part,outer_min_mm,entry_thread,armour,"), "its columns",
          path.read_text())
    done = run(["glands", "van.csv", "--part", "A-20"], folder)
    check(done.returncode == 0 and "11 to 16 mm" in done.stdout, "behind the first", done.stdout + done.stderr)


def a_barrier_gland(folder):
    told = ["X-20", "", "M20", "15", "wire", "11-16", "none", "12.5", "0.9-1.25", "12", "barrier", "18", "25", "12", "16", "-5"]
    done = run(["glands", "--new", "barrier.csv"], folder, told + [""] * 15)
    check("Bore of its chamber" in done.stdout and "1 gland." in done.stdout, "its chamber", done.stdout)
    done = run(["glands", "barrier.csv", "--part", "X-20", "--json"], folder)
    check('"chamber_bore_mm": 18' in done.stdout and '"max_cores": 12' in done.stdout, "kept", done.stdout)


def measured(folder):
    own = folder / "own.csv"
    before = own.read_bytes()
    done = run(["glands", "own.csv", "--measure", "A-20"], folder, ["wide", "24.5mm", "?", "6"])
    check(done.returncode == 0 and "armour_stop_mm 24.5, bedding_past_mm 6" in done.stdout, "kept", done.stdout)
    after = own.read_bytes()
    row = b"A-20,seals on both,M20"
    check(b"armour_stop_mm" in after and len(after.split(b"\n")) == len(before.split(b"\n")), "rows", after.decode())
    changed = [a for a, b in zip(before.split(b"\n"), after.split(b"\n")) if a != b]
    check(len(changed) == 2, "the headings and one row", repr(changed))
    done = run(["glands", "own.csv", "--part", "A-20"], folder)
    check("armour stop 24.5 mm" in done.stdout, "seen", done.stdout)
    done = run(["glands", "own.csv", "--measure", "A-20"], folder, ["25"])  # and then no more comes
    check(done.returncode == 1 and "armour_stop_mm 25." in done.stdout, "what was told is kept", done.stdout)
    after = own.read_bytes()
    for lines, status in ([], 1), (["?", "?", "?"], 0):
        done = run(["glands", "own.csv", "--measure", "A-20"], folder, lines)
        check(done.returncode == status and own.read_bytes() == after, "nothing told, nothing changed", done.stdout)
    done = run(["glands", "own.csv", "--measure", "A-2"], folder)
    check(done.returncode == 2 and 'did you mean "A-20"' in done.stderr, "which part", done.stderr)
    done = run(["glands", "--measure", "A-20"], folder)
    check(done.returncode == 2 and "invented" in done.stderr, "the built-in list keeps nothing", done.stderr)


def a_map(folder):
    done = run(["glands", "own.csv", "--covers", "--wire", "0.9", "--svg"], folder)
    drawing = xml.fromstring(done.stdout)
    fills = {each.get("fill") for each in drawing.iter("{http://www.w3.org/2000/svg}rect")}
    check({"url(#none)", "#c8c8c8"} <= fills, "none is hatched, one is light", str(fills))
    done = run(["glands", "own.csv", "--covers", "--wire", "0.9"], folder)
    lines = done.stdout.split("\n")
    check(len(lines) <= 24 and max(map(len, lines)) <= 80, "one screen", done.stdout)
    check("Gaps   sheath" in done.stdout and done.returncode == 1, "gaps in words", done.stdout)


def at_a_terminal(folder):
    socket = str(folder / "tmux")

    def tmux(*words):
        return subprocess.run(["tmux", "-S", socket, "-f", "/dev/null", *words], capture_output=True, text=True,
                              env=environment, timeout=30).stdout

    def wait(words):
        for _ in range(200):
            screen = tmux("capture-pane", "-p", "-S", "-200")
            if words in screen:
                return screen
            time.sleep(0.05)
        sys.exit(f"never shown: {words}\n{screen}")

    tmux("new-session", "-d", "-x", "80", "-y", "24", "-c", str(folder), program, "glands", "own.csv", "--measure",
         "B-25")
    tmux("set-option", "remain-on-exit", "on")
    try:
        screen = wait("How far the bedding goes past")
        check(max(map(len, screen.split("\n"))) <= 80, "too wide", screen)
        tmux("send-keys", "7", "Enter")
        wait("Kept in own.csv: bedding_past_mm 7.")
    finally:
        tmux("kill-server")


with tempfile.TemporaryDirectory() as room:
    folder = pathlib.Path(room)
    a_template(folder)
    off_the_packets(folder)
    a_code_twice(folder)
    gone_on_with(folder)
    a_barrier_gland(folder)
    measured(folder)
    a_map(folder)
    if shutil.which("tmux") is None:
        print("tmux is missing: the dialogue was not tried at a terminal")
        sys.exit(0)
    at_a_terminal(folder)
