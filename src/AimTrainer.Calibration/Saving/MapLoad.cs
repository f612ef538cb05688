using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>What came of looking for the map of a projector.</summary>
/// <param name="Place">Which projector.</param>
/// <param name="Map">The map to use; null when none may be used.</param>
/// <param name="File">The file it is from, or that may not be used; null when there is none.</param>
/// <param name="Why">
/// Why there is none, why an older one is used, or what is wrong between it and the other projectors of the lane, and what to do, in words;
/// empty when all is well.
/// </param>
/// <param name="Broken">What is wrong with newer files that were passed over: file, line, path.</param>
public sealed record MapLoad(MapPlace Place, SavedMap? Map, string? File, string Why, ValueList<FileProblem> Broken);
