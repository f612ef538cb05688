using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What undo goes back to.</summary>
/// <param name="Marks">The marks.</param>
/// <param name="Current">The mark gone to.</param>
/// <param name="Crosshair">The crosshair.</param>
/// <param name="DistortionTerms">The terms of distortion.</param>
/// <param name="What">What is taken back, in words.</param>
public sealed record PlacingMemory(ValueList<PlacedMark> Marks, int Current, ProjectorPixel Crosshair, int DistortionTerms, string What);
