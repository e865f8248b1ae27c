package dev.vibra.diagnosis.study;

/** Something that pushes. */
interface Source {
    void addTo(Forces forces, double factor);
}
