"""How the tests that read PDFs end: the tags are checked, what failed is printed, and the last line counts."""
import pathlib
import subprocess


def verdict(pdfs, failures, checked):
    """The program's exit code."""
    script = pathlib.Path(__file__).with_name("check_tags.py")
    tags = subprocess.run(["/usr/bin/python3", str(script), *map(str, pdfs)], capture_output=True, text=True)
    failures = [*failures, *tags.stdout.splitlines(), *tags.stderr.splitlines()]
    if tags.returncode != 0 and not failures:
        failures.append("check_tags.py: exit %d" % tags.returncode)
    for failure in failures:
        print(failure)
    print(f"{checked} checked, {len(failures)} failed")
    return 1 if failures or not checked or not pdfs else 0
