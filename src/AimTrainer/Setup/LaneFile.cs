using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>The lane of a session: the user's own description, or the default one.</summary>
internal static class LaneFile
{
    public static LaneProfile Read(string? file)
    {
        if (file is null)
        {
            return LaneProfileReader.Default;
        }

        var read = LaneProfileReader.Read(file, UserFiles.ReadAllBytes(file));
        return read.Value ?? throw UserException.Of(read.Problems);
    }
}
