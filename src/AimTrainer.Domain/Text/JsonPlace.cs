namespace AimTrainer.Domain;

/// <summary>Where something stands in a JSON file.</summary>
/// <param name="Offset">Bytes from the start of the text; gives the order of problems.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column in characters, from 1.</param>
/// <param name="Path">JSON path, <c>$.blocks[0].name</c>.</param>
public readonly record struct JsonPlace(int Offset, int Line, int Column, string Path);
