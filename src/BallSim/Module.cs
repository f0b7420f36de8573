using System.Runtime.CompilerServices;

// Locals are not cleared before they are written. The compiler sees to it that none is read before, but for what Unsafe.SkipInit takes out of its sight, and for stackalloc. A contact of eight lanes is three kilobytes, and an
// evaluation of the equations spent a sixth of its time in clearing what it was about to fill.
[module: SkipLocalsInit]
