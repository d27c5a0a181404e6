using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Findings;

/// <summary>A rule that knows its own texts, and makes its findings under its own name.</summary>
/// <param name="name">See <see cref="IRule.Name"/>.</param>
/// <param name="what">See <see cref="IRule.What"/>.</param>
/// <param name="why">See <see cref="IRule.Why"/>.</param>
/// <param name="formula">See <see cref="IRule.Formula"/>.</param>
/// <param name="source">See <see cref="IRule.Source"/>.</param>
public abstract class Rule(string name, string what, string why, string formula, string source) : IRule
{
    /// <inheritdoc />
    public string Name => name;

    /// <inheritdoc />
    public string What => what;

    /// <inheritdoc />
    public string Why => why;

    /// <inheritdoc />
    public string Formula => formula;

    /// <inheritdoc />
    public string Source => source;

    /// <inheritdoc />
    public virtual bool CanBeAccepted => true;

    /// <inheritdoc />
    public abstract IEnumerable<Finding> Check(HousingUnderCheck housing);

    /// <summary>A finding in millimetres at a place.</summary>
    protected Finding Found(
        Severity severity, string subject, string message, double measured, double limit, Point3? at, string remedy,
        string unit = "mm") => new()
        {
            Rule = name,
            Severity = severity,
            Subject = subject,
            Message = message,
            Measured = measured,
            Limit = limit,
            Unit = unit,
            At = at,
            Remedy = remedy,
        };
}
