using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Findings;

/// <summary>
/// A rule: one fault that it looks for, in one file. It looks at board, plan and solids, knows nothing of how parts were made, and
/// returns findings; it never throws on what it is given. Rules may run at the same time, so they keep no state.
/// </summary>
public interface IRule
{
    /// <summary>Kebab-case name for the fault: <c>screw-bottoms-out</c>.</summary>
    string Name { get; }

    /// <summary>What it looks at, one sentence.</summary>
    string What { get; }

    /// <summary>Why that matters, one sentence in the workshop's words.</summary>
    string Why { get; }

    /// <summary>How the measured value and its limit come about.</summary>
    string Formula { get; }

    /// <summary>Source of the limit: a standard, a datasheet, a profile, or "typical: check your datasheet".</summary>
    string Source { get; }

    /// <summary>Whether a maker may accept what it finds (<c>accept:</c>). A mesh that is no solid can't be accepted.</summary>
    bool CanBeAccepted => true;

    /// <summary>Everything it finds, in an order that comes from the data.</summary>
    IEnumerable<Finding> Check(HousingUnderCheck housing);
}
