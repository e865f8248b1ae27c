"""The SciPy side of the comparison. The measuring program starts it, and asks over standard input, a line a question:

    items                  -> names of all there is to run
    seconds ITEM SPAN      -> processor time of one run in s, again and again until SPAN seconds of it are spent
    result ITEM            -> number of values, and the values as bytes of doubles, least significant byte first

Usage: python3 scipy_side.py FOLDER, which holds the input that both sides read.
"""
import sys
import time

SHORTEST = 2e-4
MOST_VALUES = 400


def cost(work, repeats):
    begin = time.thread_time()
    for _ in range(repeats):
        work()
    return (time.thread_time() - begin) / repeats


def repeats_of(work):
    """So many runs are timed at once that reading the clock doesn't count."""
    repeats = 1
    while cost(work, repeats) * repeats < SHORTEST:
        repeats *= 2
    return repeats


class Item:
    """Work that is timed, what a call costs by itself, and what comes of the work, if that isn't what it returns; made
    when it is first asked for."""

    def __init__(self, make, overhead=0):
        self.make = make
        self.overhead = overhead
        self.repeats = 0

    def ready(self):
        if not self.repeats:
            self.work, self.result = self.make()
            self.repeats = repeats_of(self.work)
        return self

    def seconds(self, span):
        spent, values = 0, []
        while spent < span or len(values) < 3:
            once = cost(self.work, self.repeats)
            spent += once * self.repeats
            values.append(once - self.overhead)
        return values[-MOST_VALUES:]


def serve(items, np):
    out = sys.stdout.buffer
    for line in sys.stdin:
        question, *words = line.split()
        if question == "items":
            out.write((" ".join(items) + "\n").encode())
        elif question == "seconds":
            values = items[words[0]].ready().seconds(float(words[1]))
            out.write((" ".join(map(repr, values)) + "\n").encode())
        else:
            values = np.ascontiguousarray(items[words[0]].ready().result(), dtype="<f8").ravel()
            out.write(f"{values.size}\n".encode() + values.tobytes())
        out.flush()


def main(folder):
    try:
        import numpy as np
        import scipy
        if tuple(map(int, scipy.__version__.split(".")[:2])) < (1, 10):
            raise ImportError(f"found SciPy {scipy.__version__}")
    except ImportError as missing:
        print(f"missing {missing}", flush=True)
        return
    import components
    import fftw
    import route
    print(f"Python {sys.version.split()[0]}, SciPy {scipy.__version__}, NumPy {np.__version__}", flush=True)
    works = {**route.items(folder), **components.items(folder)}
    items = {f"scipy:{name}": Item(lambda work=work: (work, work)) for name, work in works.items()}
    items.update({f"fftw:{name}": Item(*made) for name, made in fftw.items(folder).items()})
    serve(items, np)


if __name__ == "__main__":
    main(sys.argv[1])
