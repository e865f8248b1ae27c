"""Transforms of FFTW, if its library is there: plans made with FFTW_MEASURE, on one thread, called from here. What a
call out of Python costs by itself is measured with a function that does nothing, and taken off. For the stages of the
route record these are the transforms alone that SciPy's side does: a floor, without figures."""
import ctypes
import functools

import numpy as np

import components
import route
import scipy_side

MEASURE, PRESERVE_INPUT = 0, 1 << 4
BACKWARD = 1
LIBRARY = "libfftw3.so.3"
SIZE, POINTER = ctypes.c_int, ctypes.c_void_p


def load():
    library = ctypes.CDLL(LIBRARY)
    library.fftw_malloc.restype = POINTER
    library.fftw_malloc.argtypes = [ctypes.c_size_t]
    library.fftw_execute.restype = None
    library.fftw_execute.argtypes = [POINTER]
    layout = [POINTER, POINTER, SIZE, SIZE]
    for kind in ("r2c", "c2r"):
        many = getattr(library, f"fftw_plan_many_dft_{kind}")
        many.restype = POINTER
        many.argtypes = [SIZE, POINTER, SIZE, *layout, *layout, ctypes.c_uint]
    library.fftw_plan_many_dft.restype = POINTER
    library.fftw_plan_many_dft.argtypes = [SIZE, POINTER, SIZE, *layout, *layout, SIZE, ctypes.c_uint]
    return library


class Transforms:
    """So many transforms of one length, from one array into another."""

    def __init__(self, library, kind, length, count, samples):
        inside, outside = {"r2c": (length, length + 2), "c2r": (length + 2, length)}.get(kind, (2 * length, 2 * length))
        self.size = count * outside
        source = library.fftw_malloc(8 * count * inside)
        self.target = library.fftw_malloc(8 * self.size)
        width = {"r2c": (length, length // 2 + 1), "c2r": (length // 2 + 1, length)}.get(kind, (length, length))
        n = ctypes.byref(ctypes.c_int(length))
        layout = [source, None, 1, width[0], self.target, None, 1, width[1]]
        if kind == "c2c":
            plan = library.fftw_plan_many_dft(1, n, count, *layout, BACKWARD, MEASURE | PRESERVE_INPUT)
        else:
            plan = getattr(library, f"fftw_plan_many_dft_{kind}")(1, n, count, *layout, MEASURE | PRESERVE_INPUT)
        data = np.resize(samples, count * inside)
        ctypes.memmove(source, data.ctypes.data, data.nbytes)
        self.execute = functools.partial(library.fftw_execute, plan)

    def result(self):
        self.execute()
        return np.ctypeslib.as_array(ctypes.cast(self.target, ctypes.POINTER(ctypes.c_double)), (self.size,)).copy()


def stage_transforms():
    """Kind, length and number, from the settings of the SciPy side."""
    record = route.Record(np.zeros(route.LENGTH))
    motion, peak, envelope = record.velocity.length, record.displacement.length, record.envelope.buffer.size
    blocks = route.LENGTH // (route.BLOCK // 2) - 1
    return {
        "spectrum": [("r2c", route.BLOCK, 1)] * blocks,
        "transform": [("r2c", route.LENGTH, 1), ("c2r", record.reduction.samples, 1)],
        "velocity": [("r2c", motion, 1), ("c2r", motion, 1)],
        "displacement": [("r2c", peak, 1), ("c2r", 2 * peak, 1)],
        "envelope": [("c2c", envelope, 1), ("r2c", envelope, 1)],
        "band-search": [("c2c", route.LENGTH // 2 >> level, 1 << level) for level in range(1, route.LEVELS + 1)],
    }


def make(library, folder, transforms):
    samples = components.noise(folder, 4096)
    plans = {transform: Transforms(library, *transform, samples) for transform in set(transforms)}
    made = [plans[transform] for transform in transforms]

    def work():
        for transform in made:
            transform.execute()

    return work, lambda: np.empty(0)


def real(library, folder, length):
    transform = Transforms(library, "r2c", length, 1, components.noise(folder, length))
    return transform.execute, lambda: transform.result()[: 2 * (length // 2 + 1)]


def items(folder):
    """What makes each piece of work, and what its calls cost by themselves."""
    try:
        library = load()
    except OSError:
        return {}
    nothing = ctypes.CDLL(None).free
    nothing.argtypes = [POINTER]
    nothing.restype = None
    overhead = min(scipy_side.cost(functools.partial(nothing, None), 1000) for _ in range(50))
    found = {f"real-{n}": (functools.partial(real, library, folder, n), overhead) for n in components.LENGTHS}
    stages = stage_transforms()
    stages["record"] = [transform for stage in stages.values() for transform in stage]
    for name, transforms in stages.items():
        found[name] = functools.partial(make, library, folder, transforms), overhead * len(transforms)
    return found
