using ShellForge.Checks.Gauges;
using ShellForge.Output.Report;

namespace ShellForge.Pipeline;

/// <summary>A housing from the board to the report, all in memory.</summary>
/// <param name="Housing">What was made.</param>
/// <param name="Report">What is told about it.</param>
public sealed record MadeHousing(HousingUnderCheck Housing, HousingReport Report);
