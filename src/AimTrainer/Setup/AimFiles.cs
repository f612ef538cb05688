using AimTrainer.Motion;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Bowlers and fits that a user named; what is wrong with a file is said in words.</summary>
internal static class AimFiles
{
    public static AimBowler Bowler(string file)
    {
        var read = AimBowlerReader.Read(file, UserFiles.ReadAllBytes(file));
        return read.Value ?? throw UserException.Of(read.Problems);
    }

    public static LaneBelief Fit(string file, LaneSurface sheet)
    {
        var read = LaneBeliefReader.Read(file, UserFiles.ReadAllBytes(file), sheet);
        return read.Value ?? throw UserException.Of(read.Problems);
    }
}
