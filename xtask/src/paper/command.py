"""Programs that are asked about a page."""

import subprocess


def run(*command):
    done = subprocess.run(command, capture_output=True, text=True, errors="replace")
    return done.returncode, done.stdout, done.stderr
