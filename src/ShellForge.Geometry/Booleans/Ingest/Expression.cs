using System.Collections.Immutable;

namespace ShellForge.Geometry.Booleans.Ingest;

/// <summary>
/// Which combination of operands is inside, compiled to a postfix program. An operand is "in" where its winding number is
/// positive, so operands that overlap themselves count as their own union.
/// </summary>
internal sealed class Expression
{
    private readonly Node _node;
    private readonly int _operand;
    private readonly ImmutableArray<Expression> _parts;

    private Expression(Node node, int operand, ImmutableArray<Expression> parts)
    {
        _node = node;
        _operand = operand;
        _parts = parts;
    }

    private enum Node
    {
        Leaf,
        Any,
        All,
        Less,
    }

    public static Expression Nothing { get; } = Any([]);

    public static Expression Leaf(int operand) => new(Node.Leaf, operand, []);

    public static Expression Any(ImmutableArray<Expression> parts) => new(Node.Any, -1, parts);

    public static Expression All(ImmutableArray<Expression> parts) => new(Node.All, -1, parts);

    /// <summary>The body less every cutter.</summary>
    public static Expression Less(Expression body, ImmutableArray<Expression> cutters) => new(Node.Less, -1, [body, .. cutters]);

    /// <summary>Whether the point with these winding numbers is inside.</summary>
    public bool IsInside(ReadOnlySpan<int> winding)
    {
        switch (_node)
        {
            case Node.Leaf:
                return winding[_operand] > 0;
            case Node.Any:
                foreach (Expression part in _parts)
                {
                    if (part.IsInside(winding))
                    {
                        return true;
                    }
                }

                return false;
            case Node.All:
                foreach (Expression part in _parts)
                {
                    if (!part.IsInside(winding))
                    {
                        return false;
                    }
                }

                return true;
            default:
                for (int i = 1; i < _parts.Length; i++)
                {
                    if (_parts[i].IsInside(winding))
                    {
                        return false;
                    }
                }

                return _parts[0].IsInside(winding);
        }
    }

    /// <summary>For each operand whether its outside is the result's inside somewhere: 1 as body, -1 as cutter.</summary>
    public int[] Polarity(int operands)
    {
        int[] polarity = new int[operands];
        Mark(polarity, 1);
        return polarity;
    }

    /// <summary>For people: "(0 + 1) - 2".</summary>
    public override string ToString() => _node switch
    {
        Node.Leaf => _operand.ToString(System.Globalization.CultureInfo.InvariantCulture),
        Node.Any => "(" + string.Join(" + ", _parts) + ")",
        Node.All => "(" + string.Join(" & ", _parts) + ")",
        _ => "(" + string.Join(" - ", _parts) + ")",
    };

    private void Mark(int[] polarity, int sign)
    {
        if (_node == Node.Leaf)
        {
            polarity[_operand] = sign;
        }

        for (int i = 0; i < _parts.Length; i++)
        {
            _parts[i].Mark(polarity, _node == Node.Less && i > 0 ? -sign : sign);
        }
    }
}
