using System.Globalization;

namespace AimTrainer.Calibration;

/// <summary>Marks in words, so that a person finds the one that is meant.</summary>
internal sealed record MarkWords(IReadOnlyList<CalibrationMark> Marks, FitSettings Settings)
{
    public string this[int index]
    {
        get
        {
            var number = string.Create(CultureInfo.InvariantCulture, $"mark {index + 1}");
            var name = Marks[index].Name is { } given ? $"{number}, {given}" : number;
            return $"{name} ({LaneScale.Words(Marks[index].Lane, Settings.LaneWidth)})";
        }
    }

    public string All(IEnumerable<int> indices) => string.Join(" and ", indices.Select(index => this[index]));

    public static string Numbers(IEnumerable<int> indices) =>
        string.Join(", ", indices.Select(index => (index + 1).ToString(CultureInfo.InvariantCulture)));
}
