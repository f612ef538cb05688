using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>How a CSV file of the user's is to be read.</summary>
internal static class CsvFiles
{
    public static CsvSettings Settings(LaneProfile lane, Hand? hand, string? mappingFile)
    {
        if (mappingFile is null)
        {
            return new CsvSettings { Lane = lane, Hand = hand };
        }

        var read = CsvMappingFile.Read(mappingFile, UserFiles.ReadAllBytes(mappingFile));
        return new CsvSettings { Lane = lane, Hand = hand, Mapping = read.Value ?? throw UserException.Of(read.Problems) };
    }
}
