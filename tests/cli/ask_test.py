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
    """The screen between the summary's confirmation and the command that repeats it."""
    head, _, rest = text.partition("Is all of this right?")
    screen, _, after = rest.partition("\nThe same again:\n")
    command = after.replace(" \\\n", " ").split("\n", 1)[0]
    return screen.split("> \n", 1)[1].strip("\n"), command


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


def into_the_register(folder):
    done = run(["ask", "--quiet"], folder,
               BOX + ["", "m made.csv", "P-9", "motor", "OUTER-16-M20", "B7", "strong", "25", "JB", ""])
    check("Written into made.csv" in done.stdout, "not written", done.stdout + done.stderr)
    check("! " in done.stdout, "a word is no torque", done.stdout)
    done = run(["made", "made.csv", "--json"], folder)
    check('"part": "OUTER-16-M20"' in done.stdout and '"sheath_od_mm": "14.9+15.1"' in done.stdout and
          '"torque_nm": "25"' in done.stdout, "not what was told", done.stdout + done.stderr)
    done = run(["ask", "--quiet"], folder, BOX + ["", "m made.csv", "P-9", "panel", "", "", ""])
    check("Written into made.csv" in done.stdout, "a measurement alone", done.stdout + done.stderr)
    done = run(["made", "made.csv", "--json"], folder)
    check('"measured": [' in done.stdout and done.stdout.count('"tag": "P-9"') == 2, "two rows", done.stdout)


class Terminal:
    def __init__(self, folder, columns, arguments=("ask", "--quiet")):
        self.socket = os.path.join(folder, "tmux")
        self.tmux("new-session", "-d", "-x", str(columns), "-y", "50", "-c", folder, program, *arguments)
        self.tmux("set-option", "remain-on-exit", "on")

    def tmux(self, *words):
        done = subprocess.run(["tmux", "-S", self.socket, "-f", "/dev/null", *words], capture_output=True, text=True,
                              env=environment, timeout=30)
        return done.stdout

    def screen(self):
        return self.tmux("capture-pane", "-p", "-S", "-200")

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
        term.tmux("send-keys", "Enter")
        term.wait_end()
    finally:
        term.close()


def mistakes_and_back_at_a_terminal(folder):
    term = Terminal(folder, 80)
    try:
        term.wait("What armour")
        term.type("armoured", "two ways")
        term.type("wire", "reading 1")
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
in_a_folder(into_the_register)
if shutil.which("tmux") is None:
    print("tmux is missing: the dialogue was not tried at a terminal")
    sys.exit(0)
in_a_folder(at_a_terminal, 80)
in_a_folder(at_a_terminal, 40)
in_a_folder(mistakes_and_back_at_a_terminal)
