using ShellForge.Formats.Gcode;

namespace ShellForge.Checks.Sliced;

/// <summary>A file of the maker's slicer.</summary>
/// <param name="Name">Its name without folder.</param>
/// <param name="Code">What it holds.</param>
public sealed record SlicedFile(string Name, GcodeFile Code);
