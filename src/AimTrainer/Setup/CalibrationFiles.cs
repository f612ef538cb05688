using System.CommandLine;
using AimTrainer.Calibration;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>The files of the calibrate commands.</summary>
internal static class CalibrationFiles
{
    private const string MapsFolder = "maps";

    /// <summary>The maps in the folder of the records.</summary>
    public static MapStore Store(ParseResult parsed) => new(Path.Combine(DataPlace.Of(parsed), MapsFolder), TimeProvider.System);

    public static MarksFile Marks(string file) => Good(MarksFileReader.Read(file, UserFiles.ReadAllBytes(file)));

    public static SavedMap Map(string file) => Good(MapFileReader.Read(file, UserFiles.ReadAllBytes(file)));

    public static MapQuestions Points(string file, Inches laneWidth) => Good(PointsFileReader.Read(file, UserFiles.ReadAllBytes(file), laneWidth));

    public static void Write(string file, SavedMap map)
    {
        using var stream = UserFiles.Create(file);
        stream.Write(MapFileWriter.Write(map));
    }

    private static T Good<T>(FileRead<T> read)
        where T : class => read.Value ?? throw UserException.Of(read.Problems);
}
