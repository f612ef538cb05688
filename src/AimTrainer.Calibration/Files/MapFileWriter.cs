using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Writes a map as JSON. Numbers have all their digits: what is read back is the same map, bit for bit.</summary>
public static class MapFileWriter
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The map as a file.</summary>
    public static byte[] Write(SavedMap saved)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            json.WriteStartObject();
            WriteMembers(json, saved);
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }

    private static void WriteMembers(Utf8JsonWriter json, SavedMap saved)
    {
        json.WriteNumber("format", 1);
        if (saved.Place is { } place)
        {
            json.WriteNumber("station", place.Station);
            json.WriteString("projector", place.Projector);
        }

        if (saved.Monitor is { } monitor)
        {
            json.WriteStartObject("monitor");
            json.WriteString("name", monitor.Monitor);
            json.WriteNumber("width", monitor.Size.Width);
            json.WriteNumber("height", monitor.Size.Height);
            json.WriteNumber("refreshHertz", monitor.RefreshHertz);
            json.WriteEndObject();
        }

        if (saved.SavedAt is { } at)
        {
            json.WriteString("savedAt", at.ToString("O", CultureInfo.InvariantCulture));
        }

        json.WriteStartObject("picture");
        json.WriteNumber("width", saved.Map.Picture.Width);
        json.WriteNumber("height", saved.Map.Picture.Height);
        json.WriteEndObject();
        json.WriteNumber("laneWidthInches", saved.LaneWidth.Value);
        WriteMatrix(json, saved.Map.Homography);
        json.WriteStartObject("distortion");
        json.WriteNumber("terms", saved.DistortionTerms);
        json.WriteNumber("k1", saved.Map.Distortion.K1);
        json.WriteNumber("k2", saved.Map.Distortion.K2);
        json.WriteEndObject();
        WriteStretch(json, saved.Map.Stretch);
        Write(json, "rmsPixels", saved.RmsPixels);
        Write(json, "worstPixels", saved.WorstPixels);
        Write(json, "leaveOneOutPixels", saved.LeaveOneOutPixels);
        json.WriteStartArray("marks");
        foreach (var mark in saved.Marks)
        {
            Write(json, mark, saved.LaneWidth);
        }

        json.WriteEndArray();
    }

    private static void WriteMatrix(Utf8JsonWriter json, Homography h)
    {
        json.WriteStartArray("matrix");
        foreach (var (a, b, c) in (ReadOnlySpan<(double, double, double)>)[(h.M11, h.M12, h.M13), (h.M21, h.M22, h.M23), (h.M31, h.M32, h.M33)])
        {
            json.WriteStartArray();
            json.WriteNumberValue(a);
            json.WriteNumberValue(b);
            json.WriteNumberValue(c);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteStretch(Utf8JsonWriter json, LaneStretch stretch)
    {
        json.WriteStartObject("stretch");
        json.WriteNumber("fromFeet", stretch.From.Value);
        json.WriteNumber("toFeet", stretch.To.Value);
        json.WriteNumber("nearOverlapFeet", stretch.NearOverlap.Value);
        json.WriteNumber("farOverlapFeet", stretch.FarOverlap.Value);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, CalibrationMark mark, Inches laneWidth)
    {
        json.WriteStartObject();
        if (mark.Name is { } name)
        {
            json.WriteString("name", name);
        }

        json.WriteNumber("boardFromRight", LaneScale.BoardOf(mark.Lane.Across.Value, laneWidth));
        json.WriteNumber("feet", mark.Lane.Down.Value);
        json.WriteNumber("x", mark.Pixel.X);
        json.WriteNumber("y", mark.Pixel.Y);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } known)
        {
            json.WriteNumber(name, known);
        }
    }
}
