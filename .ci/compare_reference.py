"""Runs the scripts that made a module's reference values again and compares what they write with what is committed.

    python3 compare_reference.py MODULE

The scripts are copied to MODULE/target/reference and run there. Lines must agree word by word; numbers within 1e-9 of the
largest number of their line. Comment lines (versions) may differ.
"""
import pathlib
import shutil
import subprocess
import sys

TOLERANCE = 1e-9


def number(word):
    try:
        return float(word)
    except ValueError:
        return None


def compare(committed, made):
    old = [line for line in committed.read_text("utf-8").splitlines() if not line.startswith("#")]
    new = [line for line in made.read_text("utf-8").splitlines() if not line.startswith("#")]
    if len(old) != len(new):
        sys.exit(f"{committed.name}: {len(old)} lines committed, {len(new)} made")
    for row, (left, right) in enumerate(zip(old, new)):
        words, others = left.split(), right.split()
        largest = max([abs(number(w)) for w in words if number(w) is not None], default=0)
        same = len(words) == len(others) and all(
            a == b or (number(a) is not None and number(b) is not None
                       and abs(number(a) - number(b)) <= TOLERANCE * largest)
            for a, b in zip(words, others))
        if not same:
            sys.exit(f"{committed.name}, row {row}: committed {left[:80]}, made {right[:80]}")
    return len(old)


def main(module):
    source = module / "src/test/resources/reference"
    scripts = sorted(source.glob("*.py"))
    if not scripts:
        return
    work = module / "target/reference"
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    for script in scripts:
        shutil.copy(script, work)
        subprocess.run([sys.executable, script.name], cwd=work, check=True)
    made = sorted(work.glob("*.txt"))
    if not made:
        sys.exit(f"{module.name}: the scripts wrote nothing")
    for file in made:
        print(f"{module.name}/{file.name}: {compare(source / file.name, file)} rows agree")


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
