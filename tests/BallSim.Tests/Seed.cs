#if !ANY_SEED
using FsCheck.Xunit;

// The gate says the same today and tomorrow: every property starts from this seed. Built with ANY_SEED, as .ci/deep does, every run takes another.
[assembly: Properties(Replay = "(20261125,7)")]
#endif
