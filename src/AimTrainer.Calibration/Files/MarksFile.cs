using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>A file of marks.</summary>
/// <param name="Picture">The projector's picture.</param>
/// <param name="LaneWidth">The lane's width.</param>
/// <param name="Stretch">The stretch to draw; null when the file says none.</param>
/// <param name="Marks">The marks.</param>
/// <param name="Places">Where in the file each mark stands, for messages.</param>
public sealed record MarksFile(PictureSize Picture, Inches LaneWidth, LaneStretch? Stretch, ValueList<CalibrationMark> Marks, ValueList<JsonPlace> Places);
