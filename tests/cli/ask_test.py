"""The dialogue of `cutback ask` as a user has it: through a pipe, and at a terminal (tmux).

usage: ask_test.py PROGRAM
"""
import os
import shutil
import subprocess
import sys
import tempfile
import time

program = os.path.abspath(sys.argv[1])
BOX = ["SWA", "14.9", "15.1", "9.9", "10.1", "0.9", "3C", "20mm", "clear", "2.5mm", "steel", "none", "54", ""]
environment = {k: v for k, v in os.environ.items() if k not in ("CUTBACK_GLANDS", "NO_COLOR", "TMUX")}
environment.update(LC_ALL="C.UTF-8", TERM="xterm", XDG_CONFIG_HOME="/nonexistent")


def run(arguments, folder, lines=None):
    text = None if lines is None else "".join(line + "\n" for line in lines)
    done = subprocess.run([program, *arguments], cwd=folder, input=text, text=True, capture_output=True,
                          env=environment, timeout=120)
    return done


def check(condition, what, shown=""):
    if not condition:
        sys.exit(f"{what}\n{shown}")


def answer_of(text):
    """The screen between the command that repeats it and the line of what comes next."""
    _, _, after = text.partition("\nThe same again:\n")
    command, _, rest = after.replace(" \\\n", " ").partition("\n")
    return rest.partition("\nEnter: done")[0].strip("\n"), command


def same_answer_as_fit(folder):
    import shlex
    for answers in (BOX, ["wire", "14.9+15.1", "?", "0.9", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?"],
                    ["wire", "14.9+15.1", "9.9+10.1", "0.9", "3", "M20", "threaded", "15", "steel", "1", "Ex e",
                     "IIB", "66", ""]):
        done = run(["ask", "--quiet"], folder, answers + ["", "", ""])
        for extra in range(12):  # questions that only this end asks
            if "The same again" in done.stdout:
                break
            done = run(["ask", "--quiet"], folder, answers + ["?"] * (extra + 1) + ["", ""])
        screen, command = answer_of(done.stdout)
        words = shlex.split(command)
        check(words[:2] == ["cutback", "fit"], "the command is not fit", command)
        again = run([*words[1:], "--quiet"], folder)
        check(again.stdout.strip("\n") == screen, "fit says something else", again.stdout + "\n---\n" + screen)
        check(again.returncode == done.returncode, "another exit status", done.stdout)


def stops_and_goes_on(folder):
    done = run(["ask", "--quiet"], folder, ["wire", "14.9"])
    check(done.returncode == 1 and "Saved in cutback-ask.json" in done.stdout, "nothing saved", done.stdout)
    more = run(["ask", "--quiet", "cutback-ask.json", "--save", "end.json"], folder,
               ["15.1", "9.9", "10.1", "0.9", "3C", "20mm", "clear", "2.5mm", "steel", "none", "54", "", "", ""])
    check(more.returncode == 0 and "FITS" in more.stdout, "it did not go on", more.stdout + more.stderr)
    sheet = run(["sheet", "end.json", "--quiet"], folder)
    check("OUTER-16-M20" in sheet.stdout, "the file is no job", sheet.stdout + sheet.stderr)
    check(run(["ask", "--quiet"], folder, []).returncode == 1, "nothing told is nothing done")


# A place in zone 1, up to its type of protection; then the rest.
PLACE = ["SWA", "15.1", "15.3", "10.6", "10.7", "0.9", "3", "M20", "clearance", "2.5", "steel", "1", "e"]
REST = ["IIB", "66", "", ""]


def a_file_taken_up_is_kept(folder):
    stopped = run(["ask", "--quiet", "--save", "P-201.json"], folder, PLACE)
    check("Saved in P-201.json" in stopped.stdout, "not saved", stopped.stdout)
    done = run(["ask", "--quiet", "P-201.json"], folder, REST + ["s", "180", "10", "", ""])
    check("FROM P-201.json" in done.stdout and "  Zone: 1" in done.stdout, "what it holds", done.stdout)
    check("CUT" in done.stdout and "BEDDING" in done.stdout.upper(), "through a pipe the whole sheet", done.stdout)
    with open(os.path.join(folder, "P-201.json")) as file:
        kept = file.read()
    for word in ('"gas_group": "IIB"', '"ip": "66"', '"reach_mm": 180', '"strip_mm": 10', '"slack_mm": 0'):
        check(word in kept, f"lost: {word}", kept)
    before = os.stat(os.path.join(folder, "P-201.json")).st_mtime_ns
    again = run(["ask", "--quiet", "P-201.json"], folder, ["", ""])
    check("Saved" not in again.stdout and os.stat(os.path.join(folder, "P-201.json")).st_mtime_ns == before,
          "nothing new was written", again.stdout)


def no_file_is_written_over(folder):
    precious = os.path.join(folder, "keep.json")
    with open(precious, "w") as file:
        file.write('{"tag": "PRECIOUS", "cable": {"sheath_od_mm": "33.1+33.2"}}')
    done = run(["ask", "--quiet", "--save", "keep.json"], folder, ["SWA", "15.1"])
    check(done.returncode == 2 and "cutback ask keep.json goes on with it" in done.stderr, "refused", done.stderr)
    done = run(["ask", "--quiet"], folder, BOX + ["", "w keep.json", "", "w keep.json", "y", ""])
    check(done.stdout.count("is there already") == 2 and "Saved in keep.json" in done.stdout, "asked", done.stdout)
    done = run(["ask", "--quiet", "--save", "end.json"], folder,
               BOX + ["", "o", "20.1", "20.3"] + ["?"] * 20 + ["", ""])
    check("Saved in end.json" in done.stdout and "Saved in end-2.json" in done.stdout, "two files", done.stdout)
    with open(os.path.join(folder, "end.json")) as file:
        check('"14.9+15.1"' in file.read(), "the first end is gone")
    with open(os.path.join(folder, "end-2.json")) as file:
        check('"20.1+20.3"' in file.read(), "the other end is not there")


def back_from_the_answer(folder):
    """The washer was wrong: back to the summary, its line alone, and the answer again."""
    done = run(["ask", "--quiet"], folder, BOX + ["", "<", "2", "20.1", "20.3", "", "W pump db.json", ""])
    check(done.stdout.count("SUMMARY") == 3 and "Sheath: 20.1+20.3 mm" in done.stdout, "the summary", done.stdout)
    check(done.stdout.count("The same again") == 2, "the answer once more", done.stdout)
    check("\n  cutback ask 'pump db.json'\n  cutback sheet 'pump db.json'\n" in done.stdout, "quoted", done.stdout)


def nothing_that_is_read_is_written_over(folder):
    with open(os.path.join(folder, "stock.csv"), "w") as file:
        file.write("part,entry_thread,outer_min_mm,outer_max_mm,armour,armour_min_mm,armour_max_mm\n"
                   "A,M20,11,16,wire,0.9,1.25\n")
    with open(os.path.join(folder, "stock.csv")) as file:
        list_before = file.read()
    done = run(["ask", "--quiet", "--glands", "stock.csv", "--save", "end.json"], folder,
               BOX + ["?"] * 20 + ["", "w ./stock.csv", "y", "s ./end.json", "", "", "", "y", ""])
    with open(os.path.join(folder, "stock.csv")) as file:
        check(file.read() == list_before, "the gland list is gone", done.stdout)
    with open(os.path.join(folder, "end.json")) as file:
        check('"14.9+15.1"' in file.read(), "the job is gone", done.stdout)
    check("would replace a file that is read: w and --glands" in done.stdout, "refused", done.stdout)
    check("whose name ends in .pdf or .txt" in done.stdout, "no sheet", done.stdout)


def what_is_not_known(folder):
    done = run(["ask", "--quiet"], folder, PLACE + ["?", "?", ""] + ["?"] * 9 + [""])
    check("taken for 66/68" not in done.stdout and "IP66/68" not in done.stdout, "nobody asked for it", done.stdout)
    check("Gas group: not known" in done.stdout and "Ingress protection: not known" in done.stdout,
          "the summary tells it", done.stdout)
    check("Wall: 2.5 mm" in done.stdout and "Sheath: 15.1+15.3 mm" in done.stdout, "units", done.stdout)
    check("no gland passes until it is known: ask for the area drawing" in done.stdout, "zone", done.stdout)
    answer, _ = answer_of(done.stdout)
    check(answer.startswith("NOT YET"), "nothing passes", answer)
    done = run(["ask", "--quiet", "--save", "bare.json"], folder, ["?"] * 14 + [""])
    check(done.returncode == 1 and "without the sheath" in done.stdout and "Saved in bare.json" in done.stdout,
          "a job without a sheath is kept", done.stdout + done.stderr)


def into_the_register(folder):
    done = run(["ask", "--quiet"], folder,
               BOX + ["", "m made.csv", "P-9", "motor", "OUTER-16-M20", "B7", "strong", "25 Nm", "JB", ""])
    check("Written into made.csv" in done.stdout, "not written", done.stdout + done.stderr)
    kept = run(["ask", "--quiet", "--save", "named.json"], folder, BOX + ["", "m named.csv", "P-1", "box", "y", "", "", "", ""])
    with open(os.path.join(folder, "named.json")) as file:
        text = file.read()
    check('"tag": "P-1"' in text and '"end": "box"' in text, "the job is called as its row", kept.stdout + text)
    check("! " in done.stdout and '"25 Nm" for 25 N m' in done.stdout, "a word is no torque", done.stdout)
    done = run(["made", "made.csv", "--json"], folder)
    check('"part": "OUTER-16-M20"' in done.stdout and '"sheath_od_mm": "14.9+15.1"' in done.stdout and
          '"torque_nm": "25"' in done.stdout, "not what was told", done.stdout + done.stderr)
    done = run(["ask", "--quiet"], folder, BOX + ["", "m made.csv", "P-9", "panel", "", "", ""])
    check("Written into made.csv" in done.stdout, "a measurement alone", done.stdout + done.stderr)
    done = run(["made", "made.csv", "--json"], folder)
    check('"measured": [' in done.stdout and done.stdout.count('"tag": "P-9"') == 2, "two rows", done.stdout)
    # The gland of the answer, one that did not fit, and one of no list.
    for part, status in (("y", ""), ("OUTER-16-M20", "not proven: "), ("JB", "is not in ")):
        lines = ["m made.csv", f"P-{part}", "motor", part, *([part] if status else []), "", "", "", ""]
        done = run(["ask", "--quiet"], folder, PLACE + REST + lines)
        check("Written into made.csv" in done.stdout, "not written", done.stdout)
        check((f"! {part} {status}" in done.stdout) == bool(status), "what speaks against it", done.stdout)
        made = run(["made", "made.csv", "--json"], folder).stdout
        check(f'"part": "{"ARM-16-M20" if part == "y" else part}"' in made, "the part", made)
        check(not status or f'"remark": "{status}' in made, "the row tells it", made)
    # Back to the tag, and out.
    done = run(["ask", "--quiet"], folder, PLACE + REST + ["m made.csv", "P-7", "<", "P-8", "<", "<", ""])
    check("Nothing was written" in done.stdout, "left", done.stdout)
    done = run(["ask", "--quiet"], folder, PLACE + REST + ["m made.csv", "P 9", "MOTOR", "panel", "", "", "", ""])
    check("written otherwise" in done.stdout, "the same end otherwise", done.stdout)
    done = run(["ask", "--quiet"], folder, PLACE + REST + ["m made.csv", "p-9", "MOTOR", "", "", ""])
    check("p-9, MOTOR is taken for P-9, motor" in done.stdout, "the same end in another case", done.stdout)


class Terminal:
    def __init__(self, folder, columns, arguments=("ask", "--quiet"), rows=50):
        self.socket = os.path.join(folder, "tmux")
        self.tmux("new-session", "-d", "-x", str(columns), "-y", str(rows), "-c", folder, program, *arguments)
        self.tmux("set-option", "remain-on-exit", "on")

    def tmux(self, *words):
        done = subprocess.run(["tmux", "-S", self.socket, "-f", "/dev/null", *words], capture_output=True, text=True,
                              env=environment, timeout=30)
        return done.stdout

    def screen(self):
        return self.tmux("capture-pane", "-p", "-S", "-200")

    def seen(self):
        """What stands on the terminal now, nothing of what has left it."""
        return self.tmux("capture-pane", "-p")

    def wait(self, text, times=1):
        for _ in range(150):
            if self.screen().count(text) >= times:
                return
            time.sleep(0.1)
        sys.exit(f"never seen: {text}\n{self.screen()}")

    def type(self, text, then):
        if text:
            self.tmux("send-keys", "-l", text)
        self.tmux("send-keys", "Enter")
        self.wait(then)

    def wait_end(self):
        for _ in range(150):
            if self.tmux("list-panes", "-F", "#{pane_dead}").strip() == "1":
                return
            time.sleep(0.1)
        sys.exit(f"it did not end\n{self.screen()}")

    def close(self):
        self.tmux("kill-server")


# What comes after each answer of BOX.
AFTER = ["reading 1", "reading 2", "Bedding", "right angles is", "one single wire", "How many cores", "What thread",
         "tapped, or clear", "How thick is the wall", "enclosure made of", "What zone", "ingress", "fault current",
         "SUMMARY"]


def at_a_terminal(folder, columns):
    term = Terminal(folder, columns)
    try:
        term.wait("What armour")
        for line, then in zip(BOX, AFTER):
            if columns < 80:
                then = then.split()[0]
            term.type(line, then)
        term.type("", "Enter: done")
        shown = term.screen()
        check("FITS" in shown, "no answer", shown)
        for line in shown.split("\n"):
            check(len(line) <= columns, "wider than the terminal", line)
        term.type("", "Enter once more leaves it")  # it is in no file
        term.tmux("send-keys", "Enter")
        term.wait_end()
    finally:
        term.close()


def the_answer_is_seen(folder, columns):
    """On 24 lines FITS and the gland stand above what comes next; the sheet comes page by page."""
    term = Terminal(folder, columns, ("ask", "--quiet", "--save", "seen.json"), rows=24)
    try:
        term.wait("What armour")
        for line in PLACE + REST:
            term.type(line, "> ")
            time.sleep(0.15)
        term.wait("Enter: done")
        shown = term.seen()
        check("FITS  " in shown and "ARM-16-M20" in shown and "Enter: done" in shown, "the answer is above", shown)
        check(columns >= 60 or "~" not in shown, "cut off", shown)
        term.type("s", "inside face")
        term.type("180", "stripped")
        term.type("10", "Spare length")
        term.type("", "Enter: more")
        shown = term.seen()
        check("CUT" in shown and "Enter: more" in shown, "the first page", shown)
        term.type("sheet.txt", "Written: sheet.txt")
        term.type("s sheet.txt", "is there already")
        term.type("", "Enter: done")
        term.type("s sheet.pdf", "Written: sheet.pdf")
        term.tmux("send-keys", "C-c")
        term.wait_end()
    finally:
        term.close()
    with open(os.path.join(folder, "sheet.pdf"), "rb") as file:
        check(file.read(5) == b"%PDF-", "no pages")
    with open(os.path.join(folder, "seen.json")) as file:
        check('"reach_mm": 180' in file.read(), "the route is not kept")


def a_line_asked_again(folder):
    term = Terminal(folder, 80, ("ask", "--quiet", "--save", "again.json"))
    try:
        term.wait("What armour")
        for line, then in zip(BOX, AFTER):
            term.type(line, then)
        term.type("2", "now 14.9+15.1 mm")
        term.type("<", "as it was")
        term.type("2", "Is all of this right")
        term.wait("now 14.9+15.1 mm", 2)
        term.tmux("send-keys", "C-c")
        term.wait("Saved in again.json")
        term.wait_end()
    finally:
        term.close()
    with open(os.path.join(folder, "again.json")) as file:
        check('"14.9+15.1"' in file.read(), "the old readings are gone")


def ctrl_c_behind_the_answer(folder):
    term = Terminal(folder, 80)
    try:
        term.wait("What armour")
        for line, then in zip(BOX, AFTER):
            term.type(line, then)
        term.type("", "Enter: done")
        term.tmux("send-keys", "C-c")
        term.wait("Saved in cutback-ask.json")
        term.wait_end()
    finally:
        term.close()


def a_terminal_that_is_closed(folder):
    term = Terminal(folder, 80)
    try:
        term.wait("What armour")
        term.type("wire", "reading 1")
        term.type("15.0", "so far 15.00")
    finally:
        term.close()
    for _ in range(100):
        if os.path.exists(os.path.join(folder, "cutback-ask.json")):
            return
        time.sleep(0.1)
    sys.exit("what was told is lost with the terminal")


def mistakes_and_back_at_a_terminal(folder):
    term = Terminal(folder, 80)
    try:
        term.wait("What armour")
        term.type("armoured", "two ways")
        term.type("wire", "reading 1")
        term.type("14\u00bd", '"14\u00bd"')  # no sign is lost on the way
        term.tmux("send-keys", "-l", "14.8")
        term.tmux("send-keys", "BSpace")  # edited before it is sent
        term.tmux("send-keys", "-l", "9")
        term.type("", "so far 14.90")
        term.type("<", "What armour")
        term.wait("reading 1", 2)
        term.type("15.0", "so far 15.00")
        term.tmux("send-keys", "C-c")
        term.wait("Saved in cutback-ask.json")
    finally:
        term.close()
    check(os.path.exists(os.path.join(folder, "cutback-ask.json")), "no file")
    term = Terminal(folder, 80, ("ask", "--quiet", "cutback-ask.json"))
    try:
        term.wait("so far 15.00")  # where it was left
        term.tmux("send-keys", "C-d")
        term.wait_end()
    finally:
        term.close()


def in_a_folder(test, *arguments):
    with tempfile.TemporaryDirectory() as folder:
        test(folder, *arguments)


in_a_folder(same_answer_as_fit)
in_a_folder(stops_and_goes_on)
in_a_folder(a_file_taken_up_is_kept)
in_a_folder(no_file_is_written_over)
in_a_folder(back_from_the_answer)
in_a_folder(nothing_that_is_read_is_written_over)
in_a_folder(what_is_not_known)
in_a_folder(into_the_register)
if shutil.which("tmux") is None:
    print("tmux is missing: the dialogue was not tried at a terminal")
    sys.exit(0)
in_a_folder(at_a_terminal, 80)
in_a_folder(at_a_terminal, 40)
in_a_folder(the_answer_is_seen, 80)
in_a_folder(the_answer_is_seen, 40)
in_a_folder(a_line_asked_again)
in_a_folder(ctrl_c_behind_the_answer)
in_a_folder(a_terminal_that_is_closed)
in_a_folder(mistakes_and_back_at_a_terminal)
