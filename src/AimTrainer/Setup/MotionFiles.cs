using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Releases, balls and lanes that a user named; what is wrong with a file is said in words.</summary>
internal static class MotionFiles
{
    public static Release Release(string file) => Good(ReleaseReader.Read(file, UserFiles.ReadAllBytes(file))).Release;

    public static Ball Ball(string file) => Good(BallReader.Read(file, UserFiles.ReadAllBytes(file)));

    public static LaneSurfaceFile Lane(string file) => Good(LaneSurfaceReader.Read(file, UserFiles.ReadAllBytes(file)));

    private static T Good<T>(FileRead<T> read)
        where T : class => read.Value ?? throw UserException.Of(read.Problems);
}
