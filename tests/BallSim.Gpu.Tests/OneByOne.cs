// ILGPU's emulator waits for its threads at every kernel; beside a compiler that takes all processors it takes many times as long.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
